import type { KnownUse } from "#lib/job/energy-use.ts";
import type { Citation } from "#lib/sources/source.ts";
import { DAYS_PER_YEAR } from "#lib/units/conversions.ts";
import { formatNumber } from "#lib/units/format.ts";
import { BTU_PER_UNIT, FUEL_LABELS, type Fuel, SALE_UNIT } from "../fuels.ts";
import type { Ledger } from "../ledger.ts";
import type { Mode } from "../season-bins.ts";
import type { BilledFuel } from "./read-bills.ts";

export const EVIDENCE_ORDER = ["bills", "known-use", "building"] as const;
export type EvidenceKind = (typeof EVIDENCE_ORDER)[number];

/** One way to tell what a group of systems needs in a year: by what it used, or by what the house loses. */
export interface LoadEvidence {
  from: EvidenceKind;
  /** Btu of fuel or electricity a year; null where the need itself is known and the use follows from it. */
  useBtu: number | null;
  /** The blower's electricity is part of the use: so it is on a bill. */
  includesBlower: boolean;
  relativeUncertainty: number;
  detail: string;
  source: Citation;
}

/** Relative standard uncertainty of a use that was told. Source: practice. */
const KNOWN_DOUBT = 0.09;
/** Degree days of one year about their normal. Source: practice, from memory. */
const WEATHER_OF_A_YEAR_DOUBT = { heating: 0.07, cooling: 0.1 } as const;
/** Misses of neighboring months that go together, and what is away from home. Source: practice. */
const HOUSEHOLD_DOUBT = 0.03;
/** A season that the bills leave more doubtful than this is not told by them. Source: practice. */
const MOST_DOUBT = 0.6;

const KNOWN_FIELDS = {
  electricity: "heatingElectricityKWh",
  naturalGas: "heatingNaturalGasTherms",
  propane: "heatingPropaneGallons",
  fuelOil: "heatingFuelOilGallons",
} as const satisfies Record<Fuel, keyof KnownUse>;

interface Input {
  mode: Mode;
  fuel: Fuel;
  known: KnownUse | undefined;
  billed: BilledFuel | undefined;
  /** Relative standard uncertainty of the need that follows from the building. */
  buildingDoubt: number;
  ledger: Ledger;
}

/** What the bills show of this season; null when they do not show it. */
function fromBills({ mode, fuel, billed }: Input): LoadEvidence | null {
  if (!billed) return null;
  const { yearly, periodsCount, billedDays, knowsWeather } = billed;
  const use = mode === "heating" ? yearly.heatingUse : yearly.coolingUse;
  const scatter = mode === "heating" ? yearly.relativeUncertaintyOfHeatingUse : yearly.relativeUncertaintyOfCoolingUse;
  if (!(use > 0) || scatter === null || !(scatter < MOST_DOUBT)) return null;
  const years = Math.max(1, billedDays / DAYS_PER_YEAR);
  const weather = knowsWeather ? 0 : WEATHER_OF_A_YEAR_DOUBT[mode] / Math.sqrt(years);
  return {
    from: "bills",
    useBtu: use * BTU_PER_UNIT[fuel],
    includesBlower: fuel === "electricity",
    relativeUncertainty: Math.hypot(scatter, weather, HOUSEHOLD_DOUBT),
    detail: `${periodsCount} bills, brought to a normal year; base use kept apart.`,
    source: { sourceId: "ashrae-guideline-14" },
  };
}

function fromKnownUse({ mode, fuel, known }: Input): LoadEvidence | null {
  const amount = known?.[mode === "cooling" ? "coolingElectricityKWh" : KNOWN_FIELDS[fuel]];
  if (amount === undefined) return null;
  return {
    from: "known-use",
    useBtu: amount * BTU_PER_UNIT[fuel],
    includesBlower: false,
    relativeUncertainty: KNOWN_DOUBT,
    detail: "As told.",
    source: { sourceId: "practice" },
  };
}

const fromBuilding = ({ buildingDoubt }: Input): LoadEvidence => ({
  from: "building",
  useBtu: null,
  includesBlower: false,
  relativeUncertainty: buildingDoubt,
  detail: "Heat loss of the house and its degree days.",
  source: { sourceId: "derived" },
});

/** All evidence of one season and fuel, the best first. */
export function loadEvidence(input: Input): LoadEvidence[] {
  const { mode, fuel, billed, ledger } = input;
  const bills = fromBills(input);
  if (billed && !bills) {
    ledger.warn({
      code: "bills-show-no-season",
      path: "#/energy/bills",
      severity: "doubt",
      what: `The ${FUEL_LABELS[fuel]} bills do not show how much of them is for ${mode}.`,
      why: `${billed.yearly.choice.reason} The ${mode} may be rare, or something else on the meter hides it.`,
      nextMove: `Add bills until a whole year is there. Until then other evidence speaks, held to the ${formatNumber(billed.totalUsePerYear)} ${SALE_UNIT[fuel]} a year that the bills hold.`,
    });
  }
  return [bills, fromKnownUse(input), fromBuilding(input)].filter((each) => each !== null);
}

/** The most that heating or cooling can have used: all that is billed, less what the other season took. */
export function mostUseBtu({ mode, fuel, billed }: Pick<Input, "mode" | "fuel" | "billed">): number | null {
  if (!billed) return null;
  const { heatingUse, coolingUse } = billed.yearly;
  return (billed.totalUsePerYear - (mode === "heating" ? coolingUse : heatingUse)) * BTU_PER_UNIT[fuel];
}

/** The evidence asked for, else the best there is. */
export function chooseEvidence(
  evidence: readonly LoadEvidence[],
  preferred: EvidenceKind | undefined,
): { used: LoadEvidence; isAsked: boolean } {
  const asked = evidence.find(({ from }) => from === preferred);
  return { used: asked ?? evidence[0]!, isAsked: preferred === undefined || asked !== undefined };
}
