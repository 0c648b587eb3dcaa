import { refuse } from "#lib/errors/input-problem.ts";
import { type ChangePointFit, fitChangePoint } from "./change-point-fit.ts";
import { type BillPeriod, CHANGE_POINT_MODELS, type ChangePointModel, PARAMETERS_OF } from "./change-point-model.ts";

/** Guideline 14 asks a monthly model to stay within this. */
const LARGEST_CV_RMSE = 0.25;
const LEAST_R_SQUARED = 0.5;
/** A model that explains all but this share of the variation is exact; less is rounding. */
const ROUNDING_SHARE = 1e-20;

export interface ModelChoice {
  /** `base-only`: no season shows in the bills. */
  model: ChangePointModel | "base-only";
  fit: ChangePointFit | null;
  reason: string;
}

/**
 * Chooses between the heating, the cooling and the combined model, or none.
 * Rule: of the models that can be fitted with two periods to spare, whose slopes are all above zero and whose balance
 * temperature the bills can tell, the one with the smallest corrected Akaike criterion, n ln(S/n) + 2k + 2k(k+1)/(n−k−1)
 * with k = p + 1; on a tie the one with fewer parameters. None when bills without any season do as well (k = 2), or the
 * best explains less than half of the variation and misses by more than 25 %.
 * Source: own-method on ashrae-guideline-14 (the 25 %, from memory).
 * @throws InputProblem when no model has enough periods, or as `fitChangePoint`.
 */
export function chooseChangePointModel(periods: readonly BillPeriod[]): ModelChoice {
  const n = periods.length;
  const possible = CHANGE_POINT_MODELS.filter((model) => n >= PARAMETERS_OF[model] + 2);
  if (possible.length === 0) {
    const least = Math.min(...CHANGE_POINT_MODELS.map((model) => PARAMETERS_OF[model])) + 2;
    refuse({
      field: "periods",
      detail: `A season can be told from ${least} usable bills or more, not from ${n}`,
      fix: "Add bills, best a whole year of them.",
    });
  }

  const candidates = possible
    .map((model) => ({ model, fit: fitChangePoint({ periods, model }) }))
    .filter(({ model, fit }) => hasItsSlopes(model, fit) && !fit.isBalanceAtLimit)
    .map((each) => ({
      ...each,
      criterion: correctedAkaike({ n, parameters: PARAMETERS_OF[each.model], missShare: 1 - each.fit.rSquared }),
    }));
  const best = candidates.reduce<(typeof candidates)[number] | undefined>(
    (least, each) => (least === undefined || each.criterion < least.criterion ? each : least),
    undefined,
  );
  if (best === undefined) {
    return { model: "base-only", fit: null, reason: "No season can be told from these bills." };
  }
  if (best.criterion >= correctedAkaike({ n, parameters: 1, missShare: 1 })) {
    return { model: "base-only", fit: null, reason: "Bills without any season fit these as well." };
  }
  if (best.fit.rSquared < LEAST_R_SQUARED && best.fit.cvRmse > LARGEST_CV_RMSE) {
    return {
      model: "base-only",
      fit: null,
      reason: `The temperature explains only ${(best.fit.rSquared * 100).toFixed(0)} % of how these bills vary.`,
    };
  }
  const share = (best.fit.rSquared * 100).toFixed(0);
  return {
    model: best.model,
    fit: best.fit,
    reason: `It explains ${share} % of how the bills vary, with the fewest parameters that do.`,
  };
}

function hasItsSlopes(model: ChangePointModel, { heatingSlope, coolingSlope }: ChangePointFit): boolean {
  return (model === "cooling" || heatingSlope > 0) && (model === "heating" || coolingSlope > 0);
}

/** The variation itself is the same for all models, so the share of it that is missed stands for S. */
function correctedAkaike({ n, parameters, missShare }: { n: number; parameters: number; missShare: number }): number {
  const k = parameters + 1;
  return n * Math.log(Math.max(missShare, ROUNDING_SHARE)) + 2 * k + (2 * k * (k + 1)) / (n - k - 1);
}
