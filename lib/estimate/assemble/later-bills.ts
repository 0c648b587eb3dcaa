import type { ClimateYear } from "#lib/climate/climate-year.ts";
import { typicalDays } from "#lib/climate/typical-days.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { Savings } from "#lib/job/result/energy-result.ts";
import type { LaterBills } from "#lib/job/result/loads-result.ts";
import type { Ranged } from "#lib/job/result/ranged.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import {
  type BilledYear,
  type CannotTell,
  LARGEST_FRACTIONAL_UNCERTAINTY,
  type SavingFromBills,
  savingFromBills,
} from "#lib/loads/saving-from-bills.ts";
import { formatNumber, formatPercent } from "#lib/units/format.ts";
import { billsOfFuel, splitAtWork } from "../complete/split-bills.ts";
import { FUEL_LABELS, FUELS, type Fuel, SALE_UNIT } from "../fuels.ts";

const SAVED = {
  electricity: "electricityKWh",
  naturalGas: "naturalGasTherms",
  propane: "propaneGallons",
  fuelOil: "fuelOilGallons",
} as const satisfies Record<Fuel, keyof Savings>;

/**
 * What bills from after the work say was saved of each fuel, beside the estimate's saving. Nothing, not even a name,
 * where no bill is from after the work.
 */
export function laterBillsOf({
  job,
  climate,
  savings,
}: {
  job: Job;
  climate: ClimateYear;
  savings: Savings;
}): Pick<Result, "laterBills"> {
  const bills = job.energy?.bills ?? [];
  if (bills.length === 0) return {};
  const temperaturesOf = typicalDays(climate);
  const laterBills = FUELS.flatMap((fuel): LaterBills[] => {
    const { before, after } = splitAtWork(billsOfFuel(bills, fuel), job.plan?.workDoneDate);
    if (after.length === 0) return [];
    const saving = savingFromBills({
      before: before.map(({ bill }) => bill),
      after: after.map(({ bill }) => bill),
      temperaturesOf,
    });
    return [laterBillsOfFuel(fuel, saving, savings[SAVED[fuel]])];
  });
  return laterBills.length > 0 ? { laterBills } : {};
}

function laterBillsOfFuel(fuel: Fuel, saving: SavingFromBills, estimated: Ranged): LaterBills {
  const { before, after, saved, fractionalUncertainty, cannotTell } = saving;
  const agreement = saved === null || cannotTell !== null ? null : compare(saved, estimated);
  return {
    fuel,
    unit: SALE_UNIT[fuel],
    before: before && namedYear(before),
    after: after && namedYear(after),
    saved: saved && { value: saved.value, p10: saved.p10, p50: saved.value, p90: saved.p90 },
    fractionalUncertaintyRatio: fractionalUncertainty,
    isTold: cannotTell === null,
    estimated: { ...estimated },
    agreement,
    explanation: [
      cannotTell === null ? told(fuel, saving) : whyNot(fuel, cannotTell, saving),
      ...(agreement === null ? [] : [AGREEMENTS[agreement]]),
      ...remindersOf(saving),
    ],
  };
}

const namedYear = ({ periodsCount, billedDays, knowsWeather, cvRmse, ...year }: BilledYear) => ({
  periodsCount,
  billedDays,
  knowsWeather,
  totalUse: year.totalUse,
  heatingUse: year.heatingUse,
  coolingUse: year.coolingUse,
  baseUse: year.baseUse,
  cvRmseRatio: cvRmse,
});

const AGREEMENTS = {
  agree: "That agrees with the estimate: their ranges meet.",
  "bills-show-less": "That is less than the estimate says, by more than both ranges allow.",
  "bills-show-more": "That is more than the estimate says, by more than both ranges allow.",
} as const;

/** Without draws the estimate is one number. */
function compare(bills: { p10: number; p90: number }, { value, p10, p90 }: Ranged): keyof typeof AGREEMENTS {
  if (bills.p90 < (p10 ?? value)) return "bills-show-less";
  if (bills.p10 > (p90 ?? value)) return "bills-show-more";
  return "agree";
}

const amount = (fuel: Fuel, value: number): string => {
  const unit = SALE_UNIT[fuel];
  return `${formatNumber(value)} ${unit === "therm" ? "therms" : unit}`;
};

function told(fuel: Fuel, { before, after, saved }: SavingFromBills): string {
  const change = saved!.value > 0 ? "less" : "more";
  return `In a year of typical weather the house now uses ${amount(fuel, Math.abs(saved!.value))} ${change} ${FUEL_LABELS[fuel]}: ${amount(fuel, before!.totalUse)} before, ${amount(fuel, after!.totalUse)} after.`;
}

function whyNot(fuel: Fuel, cannotTell: CannotTell, { saved, fractionalUncertainty }: SavingFromBills): string {
  switch (cannotTell.code) {
    case "too-few-bills":
      return `The ${FUEL_LABELS[fuel]} bills cannot tell yet: those ${cannotTell.side} the work cover ${cannotTell.days} days, and a year shows all its seasons.`;
    case "poor-fit":
      return `The ${FUEL_LABELS[fuel]} bills cannot tell: those ${cannotTell.side} the work do not follow the weather. ${cannotTell.reason}`;
    case "within-uncertainty":
      return `The ${FUEL_LABELS[fuel]} bills cannot tell: they show ${amount(fuel, saved!.value)} saved, and the doubt of that is ${fractionalUncertainty === null ? "larger" : `${formatPercent(fractionalUncertainty)} of it`}; a saving is told when it is below ${formatPercent(LARGEST_FRACTIONAL_UNCERTAINTY)}.`;
  }
}

function remindersOf({ before, after, hasOtherChange }: SavingFromBills): string[] {
  const isWeatherUnknown = before?.knowsWeather === false || after?.knowsWeather === false;
  return [
    ...(isWeatherUnknown
      ? [
          "Not all bills tell how warm their days were, so typical weather stands in and the years' difference from it is part of the doubt. The energy step takes the mean outdoor temperature of each bill, or a file of daily temperatures; either narrows it.",
        ]
      : []),
    ...(hasOtherChange
      ? [
          "The use that does not follow the weather changed as well, which ducts do not explain: something else in the house did.",
        ]
      : []),
  ];
}
