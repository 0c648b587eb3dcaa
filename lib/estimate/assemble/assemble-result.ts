import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import type { ScopeOption } from "#lib/job/result/plan-result.ts";
import type { Driver, Result } from "#lib/job/result/result-schema.ts";
import type { Measurement } from "#lib/measure/measurement.ts";
import { cautionsFor } from "#lib/scope/cautions.ts";
import type { PricedOption } from "#lib/scope/priced-option.ts";
import type { ChosenScopes } from "../choose-scope.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { ScopeTarget } from "../find-target.ts";
import { judgeConvergence } from "../judge-convergence.ts";
import { judgeWorth } from "../judge-worth.ts";
import type { HouseKernel } from "../kernel/house-kernel.ts";
import { outputKey } from "../kernel/write-outputs.ts";
import type { Ledger } from "../ledger.ts";
import type { SiteWorth } from "../value-leaks.ts";
import { weighMoney } from "../weigh-money.ts";
import { carbonOf } from "./carbon.ts";
import { chargeSteps, chargesOf } from "./charges.ts";
import { complianceOf } from "./compliance.ts";
import { deemedOf } from "./deemed.ts";
import { type Evaluated, energyOf, readRanged, savingsOf } from "./energy.ts";
import { energyByModeOf } from "./energy-by-mode.ts";
import { housePressureOf } from "./house-pressure.ts";
import { laterBillsOf } from "./later-bills.ts";
import { leakageOf, notYetFoundOf, sitesOf, systemsOf } from "./leakage.ts";
import { loadsOf } from "./loads.ts";
import { measuresInOrderOf } from "./measures-in-order.ts";
import { warnOfResult } from "./result-warnings.ts";
import { retestOf } from "./retest.ts";
import { traceOf } from "./trace.ts";
import { verifiedOf } from "./verified.ts";

export interface AssembleInput {
  identity: Pick<Result, "schemaVersion" | "engineVersion" | "jobHash" | "referenceDataHash" | "draws" | "seed">;
  house: HouseModel;
  reference: ReferenceData;
  measurements: readonly Measurement[];
  worth: SiteWorth;
  target: ScopeTarget | null;
  /** The chosen option comes first. */
  scopes: ChosenScopes;
  /** Its states are those of the deterministic evaluation. */
  kernel: HouseKernel;
  evaluated: Evaluated;
  predicted: Evaluated;
  isVerified: boolean;
  drivers: readonly Driver[];
  ledger: Ledger;
}

function optionOf({ predicted, target }: AssembleInput, option: PricedOption, index: number): ScopeOption {
  const { scope, price } = option;
  return {
    id: option.id,
    title: option.title,
    summary: option.summary,
    measures: option.measures.map((measure) => ({ ...measure })),
    labourHours: scope.labourHours,
    materials: option.materials.map(({ id, title, amount, unit }) => ({ id, title, amount, unit })),
    priceLines: price.lines.map(({ title, amountUsdCents }) => ({ title, amountUsdCents })),
    priceUsdCents: price.priceUsdCents,
    predictedCfm25: readRanged(
      predicted,
      outputKey.plan(index, target?.measure === "to-outside" ? "predictedToOutside" : "predictedTotal"),
    ),
    savedUsdPerYear: readRanged(predicted, outputKey.plan(index, "savedUsd")),
    probabilityOfReachingTarget: scope.probabilityOfReachingTarget,
    provenOptimal: scope.provenOptimal,
    ...(scope.gapRatio === null ? {} : { gapRatio: scope.gapRatio }),
    leavesUndone: option.leavesUndone.map(({ siteId, why }) => ({ siteId, why })),
  };
}

/** Puts everything under the names of the result document. Nothing is calculated here that a stage has not said. */
export function assembleResult(input: AssembleInput): Result {
  const {
    identity,
    house,
    reference,
    worth,
    target,
    scopes,
    kernel,
    evaluated,
    predicted,
    isVerified,
    drivers,
    ledger,
  } = input;
  const { job } = house;
  const hasWork = scopes.options.length > 0;
  const leakage = leakageOf(evaluated, "house", house.floorAreaFt2);
  const systems = systemsOf({ house, kernel, evaluated });
  const energy = energyOf(evaluated, "year");
  const savings = savingsOf(evaluated, energy);
  const charges = chargesOf(house, evaluated, energy);
  const options = scopes.options.map((option, index) => optionOf(input, option, index));
  const chosen = options.find((option) => option.id === scopes.chosenId) ?? null;
  const economics = weighMoney({
    house,
    costUsdCents: chosen?.priceUsdCents ?? 0,
    savedUsdPerYear: savings.costUsdPerYear,
    allLeaksUsdPerYear: worth.allUsdPerYear,
  });
  const compliance = complianceOf(input, leakage, chosen);
  const loads = loadsOf({ house, kernel, evaluated, ledger });
  const otherReasons = warnOfResult({ house, kernel, ledger, reference, systems, outOfReach: scopes.outOfReach });
  return {
    ...identity,
    basis: isVerified ? "verified" : "predicted",
    place: {
      title: reference.place.title,
      stationId: reference.station.id,
      stationTitle: reference.station.title,
      distanceMiles: reference.station.distanceMiles,
      heatingDesignF: reference.climate.design.heating99F,
      coolingDesignF: reference.climate.design.cooling1F,
    },
    leakage,
    systems,
    housePressure: housePressureOf(house, kernel),
    sites: sitesOf({ house, evaluated, worth }),
    notYetFound: notYetFoundOf({ house, evaluated }),
    loads,
    energy,
    energyByMonth: Array.from({ length: 12 }, (_, month) => energyOf(evaluated, month)),
    energyByMode: energyByModeOf(house, kernel),
    savings,
    charges,
    carbon: carbonOf(reference, savings),
    measuresInOrder: measuresInOrderOf(input),
    deemed: deemedOf(input, leakage, savings, chosen),
    scope: {
      target: target && {
        id: target.id,
        title: target.title,
        measure: target.measure,
        limitCfm25: target.limitCfm25,
        source: target.source,
      },
      options,
      chosen: scopes.chosenId,
      frontier: options.map((option) => ({
        priceUsdCents: option.priceUsdCents,
        predictedCfm25: option.predictedCfm25.value,
        optionId: option.id,
      })),
      verdict: judgeWorth({
        economics: hasWork && chosen ? economics : null,
        hasTarget: target !== null,
        reachesTarget: target && chosen ? chosen.predictedCfm25.value <= target.limitCfm25 : null,
        otherReasons,
      }),
    },
    economics,
    retest: retestOf(input, chosen),
    verified: isVerified ? verifiedOf(input, leakage) : null,
    promised:
      isVerified && chosen
        ? { predictedCfm25: chosen.predictedCfm25, savings: savingsOf(predicted, energyOf(predicted, "year")) }
        : null,
    ...laterBillsOf({ job, climate: reference.climate, savings }),
    compliance,
    drivers: [...drivers],
    // What no test narrows is no advice.
    narrowMost: drivers.find(({ id }) => id !== "model")?.nextMove ?? null,
    convergence: judgeConvergence(evaluated.outcome.draws?.[evaluated.layout.at(outputKey.plan(0, "savedUsd"))]),
    cautions: cautionsFor({
      hasCombustionAppliance: job.house.hasCombustionAppliance,
      builtYear: job.house.builtYear,
      sites: job.sites.map((site) => ({
        ...site,
        placeKind: house.places.find((place) => place.id === site.placeId)!.kind,
      })),
      spraysFromInside:
        (scopes.options.find(({ id }) => id === scopes.chosenId)?.scope.systemRepairIds.length ?? 0) > 0,
    }).map((caution) => ({ ...caution, appliesTo: [...caution.appliesTo] })),
    assumptions: ledger.assumptions,
    warnings: ledger.warnings,
    trace: [...traceOf(input, leakage, savings), ...chargeSteps(house, charges)],
  };
}
