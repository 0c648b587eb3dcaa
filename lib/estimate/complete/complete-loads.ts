import type { ClimateYear } from "#lib/climate/climate-year.ts";
import { degreeDaysByMonth } from "#lib/climate/degree-days-by-month.ts";
import { degreeDayLoads } from "#lib/loads/building-loads.ts";
import { formatNumber } from "#lib/units/format.ts";
import type { Ledger } from "../ledger.ts";
import { type Mode, type SeasonBins, seasonBins } from "../season-bins.ts";
import { BALANCE_DOUBT_F, completeBuilding, INFILTRATION_DOUBT, LOSS_DOUBT, takeBalance } from "./complete-building.ts";
import type { HeatingFuel } from "./complete-equipment.ts";
import type { HouseModelInput } from "./complete-house.ts";
import type { IndoorModel } from "./complete-indoor.ts";
import { completeOtherMeasures, leftBy, type OtherMeasures } from "./complete-other-measures.ts";
import type { SystemModel } from "./complete-systems.ts";
import { chooseEvidence, type LoadEvidence, loadEvidence, mostUseBtu } from "./load-evidence.ts";
import { type BilledFuel, readBills } from "./read-bills.ts";

/** Systems that share one meter in one mode, and what is known of their yearly need or use. */
export interface LoadGroup {
  mode: Mode;
  fuel: HeatingFuel;
  systemIndexes: readonly number[];
  /** The best first; one of them is used. */
  evidence: readonly LoadEvidence[];
  used: LoadEvidence;
  /** Evidence other than bills may not claim more use than this: what the bills hold. Null where there are none. */
  mostUseBtu: number | null;
  /** Yearly need of the whole house in this mode from the building; the group takes its systems' share. */
  buildingLoadBtu: number;
  /** Multiplies use or load: how far the evidence may be off. */
  loadFactorAt: number;
}

export interface LoadModel {
  indoor: IndoorModel;
  uaBtuPerHF: number;
  heatingBalanceF: number;
  coolingBalanceF: number;
  naturalInfiltrationAt: number;
  envelopeLeakageCfm50: number;
  envelopeExponent: number;
  heating: SeasonBins;
  cooling: SeasonBins;
  groups: readonly LoadGroup[];
  otherMeasures: OtherMeasures;
  billed: readonly BilledFuel[];
}

/** Part of a house's cooling need that is sensible. Source: practice. */
const SENSIBLE_SHARE_OF_COOLING = 0.75;

type Meter = Pick<LoadGroup, "mode" | "fuel" | "systemIndexes">;

/** Heat loss, gains and sun of a house judged by age and size, as a standard uncertainty of its need. Source: practice. */
const BUILDING_DOUBT = {
  heating: { ofLoss: LOSS_DOUBT.byAge, ofBalanceF: BALANCE_DOUBT_F },
  cooling: { ofLoss: 0.2, ofBalanceF: 3.5 },
} as const;
/** A season so short that its degree days hang on the balance alone is no surer than this. Source: practice. */
const MOST_BUILDING_DOUBT = 0.9;

/** How doubtful the need by the building is: heat loss, and the degree days at a balance that may be off either way. */
function buildingLoadDoubt({
  climate,
  mode,
  balanceF,
  hasParts,
}: {
  climate: ClimateYear;
  mode: Mode;
  balanceF: number;
  hasParts: boolean;
}): number {
  const { ofLoss: ofLossByAge, ofBalanceF } = BUILDING_DOUBT[mode];
  const ofLoss = hasParts ? LOSS_DOUBT.byParts : ofLossByAge;
  const degreeDays = (baseTemperatureF: number) => {
    const year = degreeDaysByMonth({ climate, baseTemperatureF });
    return mode === "heating" ? year.heatingDegreeDays : year.coolingDegreeDays;
  };
  const [less, more] = [degreeDays(balanceF - ofBalanceF), degreeDays(balanceF + ofBalanceF)];
  const ofBalance = less > 0 && more > 0 ? Math.abs(Math.log(more / less)) / 2 : MOST_BUILDING_DOUBT;
  return Math.min(MOST_BUILDING_DOUBT, Math.hypot(ofLoss, ofBalance));
}

/** One group a mode and fuel. */
function metersOf(systems: readonly SystemModel[]): Meter[] {
  const meters = new Map<string, Meter & { systemIndexes: number[] }>();
  systems.forEach((system, index) => {
    for (const mode of ["heating", "cooling"] as const) {
      const fuel =
        mode === "cooling" ? (system.cooling ? ("electricity" as const) : null) : (system.heating?.fuel ?? null);
      if (!fuel) continue;
      const key = `${mode}/${fuel}`;
      const meter = meters.get(key) ?? { mode, fuel, systemIndexes: [] };
      meter.systemIndexes.push(index);
      meters.set(key, meter);
    }
  });
  return [...meters.values()];
}

/** Says that what other measures save is not saved by the ducts again. */
function warnOfOthersFirst(mode: Mode, { inOrder }: OtherMeasures, ledger: Ledger): void {
  const before = inOrder.filter(({ isBeforeDucts, needLeft }) => isBeforeDucts && needLeft[mode] < 1);
  const [first] = before;
  if (!first) return;
  const share = 1 - leftBy(before, "needLeft", mode);
  ledger.warn({
    code: "other-measures-first",
    path: first.pointer[mode],
    severity: "note",
    what: `Other measures lower the ${mode} need by ${formatNumber(100 * share)} % before the ducts are sealed.`,
    why: "What both would save is counted once: the energy before the sealing is what those measures leave.",
    nextMove: "The savings of each measure at its turn stand beside that of the ducts; together they add up.",
  });
}

/** What the house needs in heat and cold over a year, by the best evidence there is for each meter. */
export function completeLoads(
  input: HouseModelInput & { systems: readonly SystemModel[]; airDensityLbPerFt3: number; indoor: IndoorModel },
): LoadModel {
  const { job, ledger, space, systems, climate, indoor } = input;
  const { energy } = job;
  const meters = metersOf(systems);
  const building = completeBuilding({ ...input, indoor });
  const { uaBtuPerHF, infiltrationCfm, envelopeLeakageCfm50, envelopeExponent } = building;
  const serves = (fuel: HeatingFuel) => ({
    // A furnace's blower runs on electricity.
    heats: meters.some((meter) => meter.mode === "heating" && (meter.fuel === fuel || fuel === "electricity")),
    cools: meters.some((meter) => meter.mode === "cooling" && meter.fuel === fuel),
  });
  const billed = readBills({ ...input, building, serves });
  const balanceOf = (mode: Mode) =>
    takeBalance({
      ...input,
      mode,
      building,
      billed:
        (energy?.prefer ?? "bills") === "bills"
          ? billed.filter(({ fuel }) => meters.some((meter) => meter.mode === mode && meter.fuel === fuel))
          : [],
    });
  const heatingBalanceF = balanceOf("heating");
  const coolingBalanceF = balanceOf("cooling");
  // Only a price by time of day asks for the shifts apart.
  const slotsPerMonth = job.rates?.electricityByShift ? 3 : 1;
  const heating = seasonBins({ climate, mode: "heating", balanceF: heatingBalanceF, slotsPerMonth });
  const cooling = seasonBins({ climate, mode: "cooling", balanceF: coolingBalanceF, slotsPerMonth });
  const sensibleShare = () =>
    ledger.take<number>(job.house.sensibleLoadShare, {
      path: "#/house/sensibleLoadShare",
      title: "Part of the house's cooling need that is heat, not moisture",
      value: SENSIBLE_SHARE_OF_COOLING,
      unit: "share",
      reason: "A common figure; where the need follows from the building.",
      source: { sourceId: "practice" },
      low: 0.65,
      high: 0.9,
    });
  const buildingLoad = (mode: Mode) =>
    degreeDayLoads({
      uaBtuPerHF,
      monthlyDegreeDays: [(mode === "heating" ? heating : cooling).degreeDays],
      sensibleShare: mode === "heating" ? 1 : sensibleShare(),
    }).yearlyBtu;
  const otherMeasures = completeOtherMeasures(input);
  for (const mode of ["heating", "cooling"] as const) warnOfOthersFirst(mode, otherMeasures, ledger);
  const groups = meters.map((meter): LoadGroup => {
    const { mode, fuel } = meter;
    const about = { mode, fuel, billed: billed.find((each) => each.fuel === fuel) };
    const buildingDoubt = buildingLoadDoubt({
      climate,
      mode,
      balanceF: mode === "heating" ? heatingBalanceF : coolingBalanceF,
      hasParts: (job.house.envelopeParts ?? []).length > 0,
    });
    const evidence = loadEvidence({ ...about, known: energy?.knownUse, buildingDoubt, ledger });
    const { used, isAsked } = chooseEvidence(evidence, energy?.prefer);
    const load = buildingLoad(mode);
    if (used.from === "building") {
      ledger.take<number>(undefined, {
        path: `#/energy/knownUse/${mode}`,
        title: `Yearly ${mode} need of the house`,
        value: load / 1e6,
        unit: "million Btu",
        reason:
          evidence.length === 1
            ? "No bills and no known use, so from the heat loss of the house and its degree days."
            : "As asked, from the heat loss of the house and its degree days.",
        source: { sourceId: "derived" },
        low: (load / 1e6) * Math.exp(-1.28 * buildingDoubt),
        high: (load / 1e6) * Math.exp(1.28 * buildingDoubt),
      });
    }
    if (!isAsked) {
      ledger.warn({
        code: "evidence-missing",
        path: "#/energy/prefer",
        severity: "note",
        what: `The ${mode} need was to come from ${energy!.prefer === "bills" ? "the bills" : "the known use"}, which say nothing of it.`,
        why: "What was asked for is not there, so the next best evidence is used.",
        nextMove: "Add it, or choose other evidence.",
      });
    }
    return {
      ...meter,
      evidence,
      used,
      mostUseBtu: used.from === "bills" ? null : mostUseBtu(about),
      buildingLoadBtu: load,
      loadFactorAt: space.add({
        key: `loads/${mode}/${fuel}`,
        group: "loads",
        base: 1,
        spread: { shape: "relative", standardUncertainty: used.relativeUncertainty, min: 0.1, max: 5 },
      }),
    };
  });
  return {
    indoor,
    uaBtuPerHF,
    envelopeLeakageCfm50,
    envelopeExponent,
    heatingBalanceF,
    coolingBalanceF,
    naturalInfiltrationAt: space.add({
      key: "naturalInfiltrationCfm",
      group: "loads",
      base: infiltrationCfm,
      spread: { shape: "relative", standardUncertainty: INFILTRATION_DOUBT, min: 5, max: 2000 },
    }),
    heating,
    cooling,
    groups,
    otherMeasures,
    billed,
  };
}
