import type { PlaceKind } from "#lib/job/place.ts";
import {
  type AirPath,
  HOUSE,
  type TrueAirHandler,
  type TrueBranch,
  type TrueHouse,
  type TrueLeak,
  type TrueRoom,
  type TrueZone,
} from "./true-house.ts";

/**
 * Each house draws its numbers from these ranges, evenly unless said otherwise. They are wide enough to hold the houses
 * a tester meets and make no claim about how many of each there are. Source: practice, from memory.
 */
const RANGES = {
  floorAreaFt2: [900, 3200],
  /** Envelope at 50 Pa a square foot of floor: tight new to drafty old. */
  envelopeCfm50PerFt2: [0.6, 2],
  envelopeExponent: [0.6, 0.7],
  fanFlowCfmPerFt2: [0.5, 0.75],
  supplyStaticPa: [25, 75],
  returnStaticPa: [25, 100],
  equipmentDropPa: [30, 60],
  filterDropPa: [20, 60],
  /** Total leakage at 25 Pa over fan flow, evenly in its logarithm. */
  leakageShare: [0.04, 0.35],
  supplyShareOfLeakage: [0.3, 0.8],
  leakExponent: [0.55, 0.65],
  leaksOnEachSide: [3, 7],
  /** A leak in a run takes at most this share of what the run passes at 25 Pa; a torn-off run is not among these houses. */
  largestShareOfRun: 0.2,
  /** Share of leaks that open into the rooms or the walls inside. */
  indoorShare: [0.1, 0.5],
} as const;

/** Zones by kind: openings at 25 Pa a square foot of floor, to the house and to outside. */
const ZONE_KINDS = [
  { kind: "attic", label: "Attic", toHouse: [0.05, 0.3], toOutside: [8, 20] },
  { kind: "vented-crawlspace", label: "Vented crawlspace", toHouse: [0.1, 0.4], toOutside: [4, 12] },
  { kind: "unvented-crawlspace", label: "Sealed crawlspace", toHouse: [0.3, 1], toOutside: [0.2, 0.6] },
  { kind: "basement", label: "Basement", toHouse: [1, 4], toOutside: [0.15, 0.4] },
  { kind: "garage", label: "Garage", toHouse: [0.02, 0.1], toOutside: [0.6, 2] },
] as const satisfies readonly { kind: PlaceKind; label: string; toHouse: Range; toOutside: Range }[];

type Range = readonly [low: number, high: number];

/**
 * A plausible house with known leaks, from chance that is handed in.
 * `random` gives evenly spread numbers from 0 to below 1; the same numbers give the same house. Distributions: `RANGES`
 * and `ZONE_KINDS` above. Source: practice. Left out: several systems, zoning dampers, manufactured homes.
 */
export function randomHouse(random: () => number): TrueHouse {
  const within = ([low, high]: Range) => low + (high - low) * random();
  const whole = (range: Range) => Math.floor(within([range[0], range[1] + 1]));
  const logWithin = ([low, high]: Range) => low * (high / low) ** random();

  const floorAreaFt2 = within(RANGES.floorAreaFt2);
  const fanFlowCfm = floorAreaFt2 * within(RANGES.fanFlowCfmPerFt2);
  const zones = drawZones(random, floorAreaFt2, within);
  const rooms: TrueRoom[] = ["Bedroom 1", "Bedroom 2", "Bedroom 3"].map((label, index) => ({
    id: `room-${index + 1}`,
    label,
    doorGap: { flowCfm25: within([90, 220]), exponent: 0.5 },
    envelopeShare: 0.15,
  }));
  const supplyStaticPa = within(RANGES.supplyStaticPa);
  const returnStaticPa = within(RANGES.returnStaticPa);
  const branches = [
    ...drawBranches("supply", whole([6, 10]), fanFlowCfm, supplyStaticPa, rooms, within),
    ...drawBranches("return", whole([1, 2]), fanFlowCfm, returnStaticPa, [], within),
  ];
  const totalCfm25 = fanFlowCfm * logWithin(RANGES.leakageShare);
  const supplyShare = within(RANGES.supplyShareOfLeakage);
  const indoorShare = within(RANGES.indoorShare);
  const leaksOf = (side: "supply" | "return", cfm25: number) => {
    const weights = Array.from({ length: whole(RANGES.leaksOnEachSide) }, () => logWithin([0.1, 1]));
    const sum = weights.reduce((total, weight) => total + weight, 0);
    const runs = branches.filter((branch) => branch.side === side);
    return weights.map(
      (weight, index): TrueLeak => ({
        id: `${side}-leak-${index + 1}`,
        side,
        label: `${side} leak ${index + 1}`,
        ...seatOf(pick(runs, random), (cfm25 * weight) / sum, random),
        zoneId: random() < indoorShare ? HOUSE : pick(zones, random).id,
        flowCfm25: (cfm25 * weight) / sum,
        exponent: within(RANGES.leakExponent),
      }),
    );
  };
  return {
    id: "random-house",
    floorAreaFt2,
    envelope: pathAt(floorAreaFt2 * within(RANGES.envelopeCfm50PerFt2), 50, within(RANGES.envelopeExponent)),
    zones,
    rooms,
    branches,
    airHandler: drawAirHandler(fanFlowCfm, supplyStaticPa + returnStaticPa, within),
    leaks: [...leaksOf("supply", totalCfm25 * supplyShare), ...leaksOf("return", totalCfm25 * (1 - supplyShare))],
  };
}

/** A way for air that passes a flow at a pressure. */
export const pathAt = (flowCfm: number, pressurePa: number, exponent: number): AirPath => ({
  flowCfm25: flowCfm * (25 / pressurePa) ** exponent,
  exponent,
});

/** Half of the leaks sit in a run, if the run is wide enough for them; the others, and the large ones, at the plenum. */
function seatOf(run: TrueBranch, flowCfm25: number, random: () => number): Pick<TrueLeak, "branchId"> {
  return random() < 0.5 && flowCfm25 < RANGES.largestShareOfRun * run.duct.flowCfm25 ? { branchId: run.id } : {};
}

const pick = <Item>(items: readonly Item[], random: () => number): Item => items[Math.floor(random() * items.length)]!;

/** One or two kinds of zone, none twice. */
function drawZones(random: () => number, floorAreaFt2: number, within: (range: Range) => number): TrueZone[] {
  const first = pick(ZONE_KINDS, random);
  const second = pick(ZONE_KINDS, random);
  return [...new Set(random() < 0.5 ? [first] : [first, second])].map(({ kind, label, toHouse, toOutside }) => ({
    id: kind,
    kind,
    label,
    toHouse: { flowCfm25: floorAreaFt2 * within(toHouse), exponent: 0.6 },
    toOutside: { flowCfm25: floorAreaFt2 * within(toOutside), exponent: 0.55 },
  }));
}

/** Runs of unequal size; a tenth of the pressure is left at the register. The hall gets the first run of each side. */
function drawBranches(
  side: "supply" | "return",
  count: number,
  fanFlowCfm: number,
  staticPa: number,
  rooms: readonly TrueRoom[],
  within: (range: Range) => number,
): TrueBranch[] {
  const weights = Array.from({ length: count }, () => within([0.6, 1.4]));
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.map((weight, index) => ({
    id: `${side}-${index + 1}`,
    side,
    label: side === "supply" ? `Register ${index + 1}` : `Return grille ${index + 1}`,
    roomId: index === 0 || rooms.length === 0 ? HOUSE : rooms[index % rooms.length]!.id,
    duct: pathAt((fanFlowCfm * weight) / sum, 0.9 * staticPa, 0.5),
    register: pathAt((fanFlowCfm * weight) / sum, 0.1 * staticPa, 0.5),
  }));
}

/** A fan that gives its flow near the static pressures drawn, falling by 0.2 to 2 cfm for each pascal more. */
function drawAirHandler(flowCfm: number, staticPa: number, within: (range: Range) => number): TrueAirHandler {
  const slopeCfmPerPa = within([0.2, 2]);
  return {
    flowAtZeroCfm: flowCfm + slopeCfmPerPa * staticPa,
    slopeCfmPerPa,
    passage: pathAt(flowCfm, within(RANGES.equipmentDropPa), 0.5),
    filter: pathAt(flowCfm, within(RANGES.filterDropPa), 0.5),
    heatingOutputBtuPerH: flowCfm * within([45, 60]),
  };
}
