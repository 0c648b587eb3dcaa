import type { Job } from "#lib/job/job-schema.ts";
import { LEAK_KINDS } from "#lib/job/leak-kinds.ts";
import { PLACE_LABELS } from "#lib/job/place.ts";
import type { EnergyByFuel } from "#lib/job/result/energy-result.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { shownFromStored, shownUnitOf, type UnitSystem } from "#lib/units/display-unit.ts";
import type { EnergyMonthsInput, MonthlyFuel } from "../energy-months.ts";
import type { LeaksRankedInput } from "../leaks-ranked.ts";
import type { PriceFrontierInput } from "../price-frontier.ts";
import type { SavingsDriversInput } from "../savings-drivers.ts";
import type { SavingsRangeInput } from "../savings-range.ts";
import { chosenOption } from "./chosen-option.ts";

/** The range of the yearly saving; undefined where no draws were made. */
export function savingsRangeOf({ savings }: Result): SavingsRangeInput | undefined {
  const { p10, p50, p90 } = savings.costUsdPerYear;
  if (p10 === undefined || p50 === undefined || p90 === undefined || p90 === p10) return undefined;
  return { p10UsdPerYear: p10, p50UsdPerYear: p50, p90UsdPerYear: p90 };
}

export function savingsDriversOf({ savings, drivers }: Result): SavingsDriversInput | undefined {
  if (drivers.length === 0) return undefined;
  return {
    savedUsdPerYear: savings.costUsdPerYear.value,
    drivers: drivers.map(({ id, title, lowUsdPerYear, highUsdPerYear }) => ({
      id,
      label: title,
      lowUsdPerYear,
      highUsdPerYear,
    })),
  };
}

const FUELS: readonly {
  id: string;
  label: string;
  unit: string;
  read(month: EnergyByFuel): { before: number; after: number };
}[] = [
  {
    id: "naturalGas",
    label: "natural gas",
    unit: "therms",
    read: ({ naturalGas }) => ({ before: naturalGas.beforeTherms.value, after: naturalGas.afterTherms.value }),
  },
  {
    id: "propane",
    label: "propane",
    unit: "gal",
    read: ({ propane }) => ({ before: propane.beforeGallons.value, after: propane.afterGallons.value }),
  },
  {
    id: "fuelOil",
    label: "heating oil",
    unit: "gal",
    read: ({ fuelOil }) => ({ before: fuelOil.beforeGallons.value, after: fuelOil.afterGallons.value }),
  },
  {
    id: "electricity",
    label: "electricity",
    unit: "kWh",
    read: ({ electricity }) => ({ before: electricity.beforeKWh.value, after: electricity.afterKWh.value }),
  },
];

/** Each fuel that this house uses, month by month, in the reader's units. */
export function energyMonthsOf({ energyByMonth }: Result, system: UnitSystem = "us"): EnergyMonthsInput {
  const fuels = FUELS.map(({ id, label, unit, read }): MonthlyFuel => {
    const months = energyByMonth.map(read);
    const shown = (value: number) => shownFromStored({ value, unit, system });
    return {
      id,
      label,
      unit: shownUnitOf({ unit, system }),
      before: months.map((each) => shown(each.before)),
      after: months.map((each) => shown(each.after)),
    };
  });
  return { fuels: fuels.filter((fuel) => fuel.before.some((use) => use > 0)) };
}

/** The leaks found, largest first, with the same numbers as on the drawing of the house. */
export function leaksRankedOf({ job, result }: { job: Job; result: Result }): LeaksRankedInput {
  const sealed = new Set(chosenOption(result)?.measures.map((measure) => measure.siteId));
  const places = new Map(job.places.map((place) => [place.id, place.label ?? PLACE_LABELS[place.kind]]));
  return {
    leaks: job.sites.flatMap((site, index) => {
      const answer = result.sites.find(({ id }) => id === site.id);
      if (!answer) return [];
      return [
        {
          id: site.id,
          number: index + 1,
          label: site.label ?? LEAK_KINDS[site.kind].label,
          placeLabel: places.get(site.placeId) ?? "",
          cfm25: answer.cfm25.value,
          lostUsdPerYear: answer.costUsdPerYear,
          effort: site.reach ?? ("moderate" as const),
          isSealed: sealed.has(site.id),
        },
      ];
    }),
  };
}

/** Price against what is left to leak; undefined where there is no choice to show. */
export function priceFrontierOf({ scope, leakage }: Result): PriceFrontierInput | undefined {
  if (scope.options.length === 0) return undefined;
  const measure = scope.target?.measure ?? "total";
  return {
    todayCfm25: measure === "total" ? leakage.totalCfm25.value : leakage.toOutsideCfm25.value,
    ...(scope.target ? { targetCfm25: scope.target.limitCfm25 } : {}),
    points: scope.options.map((option) => ({
      id: option.id,
      label: option.title,
      priceUsdCents: option.priceUsdCents,
      predictedCfm25: option.predictedCfm25.value,
      ...(option.predictedCfm25.p10 === undefined ? {} : { p10Cfm25: option.predictedCfm25.p10 }),
      ...(option.predictedCfm25.p90 === undefined ? {} : { p90Cfm25: option.predictedCfm25.p90 }),
      isChosen: option.id === scope.chosen,
    })),
  };
}
