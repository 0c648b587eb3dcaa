import type { TripStep } from "#app/design/trip-rail.tsx";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { formatUsd } from "#lib/units/format.ts";
import { unitText } from "#lib/units/unit-text.ts";
import type { Answer } from "./answer.ts";
import type { Draft } from "./draft.ts";
import type { MissingField } from "./missing.ts";
import { STEP_DETAILS, STEP_WORDS, TRIP_STEPS, type TripStepId } from "./trip-steps.ts";

/** The rail at the left: what was answered in small print, what is still needed, and where the trip leads. */
export function railSteps({
  draft,
  units,
  step,
  problems,
  openUsdPerYear = {},
  hrefOf,
}: {
  draft: Draft;
  units: UnitSystem;
  step: TripStepId | "result";
  problems: readonly MissingField[];
  /** What the assumed values of each step are worth, either way. */
  openUsdPerYear?: Answer["openUsdPerYear"];
  hrefOf: (id: string) => string;
}): TripStep[] {
  const steps = TRIP_STEPS.map((id): TripStep => {
    const detail = STEP_DETAILS[id](draft, unitText(units));
    const open = problems.filter((each) => each.step === id).length;
    return {
      id,
      label: STEP_WORDS[id].label,
      href: hrefOf(id),
      state: id === step ? "current" : detail && open === 0 ? "done" : "waiting",
      ...(detail ? { detail } : {}),
      ...openWords({
        needed: detail || id === step ? open : 0,
        usdPerYear: openUsdPerYear[id] ?? 0,
      }),
    };
  });
  return [
    ...steps,
    { id: "result", label: "Result", href: hrefOf("result"), state: step === "result" ? "current" : "waiting" },
  ];
}

/** Less than this is not worth a line. */
const LEAST_USD_PER_YEAR = 5;

/** What a step still needs; else what its open answers cost in certainty. */
function openWords({ needed, usdPerYear }: { needed: number; usdPerYear: number }): Pick<TripStep, "missing"> {
  if (needed > 0) return { missing: `${needed} still needed` };
  return usdPerYear < LEAST_USD_PER_YEAR ? {} : { missing: `assumed ±${formatUsd(usdPerYear)}/yr` };
}
