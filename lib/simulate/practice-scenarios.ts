import type { PlaceKind } from "#lib/job/place.ts";
import type { Cfm } from "#lib/units/quantity.ts";
import type { PracticeSetup } from "./practice-setup.ts";
import { pathAt } from "./random-house.ts";
import { HOUSE, type TrueHouse, type TrueLeak, type TrueZone } from "./true-house.ts";

/** An invented house with a set-up to be made right, and what it teaches. */
export interface PracticeScenario {
  id: string;
  title: string;
  /** What the learner is told. */
  story: string;
  /** What the learner should know afterwards. */
  lesson: string;
  house: TrueHouse;
  start: PracticeSetup;
}

const attic: TrueZone = zone("attic", "Attic", 2, 20_000);
const crawlspace: TrueZone = zone("vented-crawlspace", "Vented crawlspace", 300, 12_000);
const basement: TrueZone = zone("basement", "Basement", 5000, 500);

/** As it should be, but for the fans, which stand still. */
const RIGHT_PUSHING: PracticeSetup = {
  testKind: "total-leakage",
  direction: "pushing",
  restrictorId: "middle",
  hasFlowStraightener: false,
  fanConnection: "central-return",
  personAt: "house",
  hoses: {
    duct: { signal: "supply-plenum", reference: "open-port" },
    fan: { signal: "fan-flow-tap", reference: "open-port" },
    house: { signal: "open-port", reference: "outside" },
  },
  isOutsideDoorOpen: true,
  registerCover: "adhesive-film",
  forgottenBranchIds: [],
  isFilterIn: false,
  isAirHandlerOn: false,
  ductFanSpeedShare: 0,
  houseFanSpeedShare: 0,
};

export const PRACTICE_SCENARIOS: readonly PracticeScenario[] = [
  {
    id: "first-test",
    title: "A first total-leakage test",
    story: "A one-storey house, ducts in the attic. Everything is set up. Bring the ducts to 25 Pa and read.",
    lesson: "Speed, pressure and fan pressure belong together; the result is read at 25 Pa.",
    house: inventedHouse(
      "practice-1",
      1600,
      [attic],
      [
        ["supply", "attic", 70, undefined],
        ["supply", HOUSE, 45, "supply-2"],
        ["return", "attic", 60, undefined],
      ],
    ),
    start: RIGHT_PUSHING,
  },
  {
    id: "swapped-hoses",
    title: "The reading has the wrong sign",
    story: "Your helper connected the gauge and covered the registers. Something is odd about both.",
    lesson: "Pushing shows plus. A minus is two swapped hoses; far too much flow is an open register.",
    house: inventedHouse(
      "practice-2",
      1900,
      [attic],
      [
        ["supply", "attic", 90, "supply-1"],
        ["supply", HOUSE, 30, "supply-3"],
        ["return", "attic", 50, undefined],
      ],
    ),
    start: {
      ...RIGHT_PUSHING,
      hoses: { ...RIGHT_PUSHING.hoses, duct: { signal: "open-port", reference: "supply-plenum" } },
      forgottenBranchIds: ["supply-4"],
      ductFanSpeedShare: 0.6,
    },
  },
  {
    id: "film-and-door",
    title: "A cold day, all doors shut",
    story: "It is freezing, so the doors are shut. The registers are covered with cling film, because it is cheap.",
    lesson:
      "Pushing blows cling film off. With the house shut, the house moves with the fan and the leakage reads low.",
    house: inventedHouse(
      "practice-3",
      1400,
      [crawlspace],
      [
        ["supply", "vented-crawlspace", 110, undefined],
        ["supply", HOUSE, 25, "supply-2"],
        ["return", "vented-crawlspace", 70, "return-1"],
      ],
      500,
    ),
    start: { ...RIGHT_PUSHING, registerCover: "cling-film", isOutsideDoorOpen: false, ductFanSpeedShare: 0.5 },
  },
  {
    id: "pulling",
    title: "Turned round",
    story: "To save on film you pull instead of push. The fan is turned round, the hoses are as they were.",
    lesson:
      "Pulling: flow straightener before the fan, flow tap read against the air on the duct side, minus on the gauge.",
    house: inventedHouse(
      "practice-4",
      2000,
      [attic],
      [
        ["supply", "attic", 80, "supply-2"],
        ["supply", HOUSE, 60, undefined],
        ["return", "attic", 90, undefined],
      ],
    ),
    start: {
      ...RIGHT_PUSHING,
      direction: "pulling",
      registerCover: "cling-film",
      restrictorId: "open",
      ductFanSpeedShare: 0.6,
    },
  },
  {
    id: "from-the-attic",
    title: "To outside, read from the attic",
    story: "Leakage to outside. You stand in the attic with the gauge, the filter is still in.",
    lesson: "The ducts are read against the house wherever you stand; the house is brought to 25 Pa against outside.",
    house: inventedHouse(
      "practice-5",
      2200,
      [attic, basement],
      [
        ["supply", "attic", 85, undefined],
        ["supply", "basement", 40, "supply-1"],
        ["supply", HOUSE, 50, "supply-4"],
        ["return", "attic", 75, undefined],
      ],
    ),
    start: {
      ...RIGHT_PUSHING,
      testKind: "leakage-to-outside",
      personAt: "attic",
      hoses: {
        duct: { signal: "supply-plenum", reference: "open-port" },
        fan: { signal: "fan-flow-tap", reference: "fan-surroundings" },
        house: { signal: "house", reference: "outside" },
      },
      isOutsideDoorOpen: false,
      isFilterIn: true,
      ductFanSpeedShare: 0.5,
      houseFanSpeedShare: 0.4,
    },
  },
  {
    id: "torn-run",
    title: "Cannot reach 25 Pa",
    story: "At full speed the ducts stay far below 25 Pa. Is it the fan, the restrictor, the film or the house?",
    lesson: "Film first, then a torn-off run, then restrictor and fan. What remains is carried up to 25 Pa and marked.",
    house: inventedHouse(
      "practice-6",
      1700,
      [crawlspace],
      [
        ["supply", "vented-crawlspace", 900, undefined],
        ["supply", HOUSE, 40, "supply-1"],
        ["return", "vented-crawlspace", 260, undefined],
      ],
    ),
    start: { ...RIGHT_PUSHING, restrictorId: "narrow", ductFanSpeedShare: 1 },
  },
];

type LeakRow = readonly [side: "supply" | "return", zoneId: string, flowCfm25: Cfm, branchId: string | undefined];

/** Five supply runs, one return, an air handler of usual strength for the floor area. */
function inventedHouse(
  id: string,
  floorAreaFt2: number,
  zones: readonly TrueZone[],
  leaks: readonly LeakRow[],
  envelopeCfm50 = floorAreaFt2,
): TrueHouse {
  const fanFlowCfm = 0.6 * floorAreaFt2;
  const run = (
    side: "supply" | "return",
    number: number,
    share: number,
    roomId: string,
  ): TrueHouse["branches"][number] => ({
    id: `${side}-${number}`,
    side,
    label: side === "supply" ? `Register ${number}` : "Central return",
    roomId,
    duct: pathAt(share * fanFlowCfm, 45, 0.5),
    register: pathAt(share * fanFlowCfm, 5, 0.5),
  });
  return {
    id,
    floorAreaFt2,
    envelope: pathAt(envelopeCfm50, 50, 0.65),
    zones,
    rooms: [{ id: "room-1", label: "Bedroom", doorGap: { flowCfm25: 150, exponent: 0.5 }, envelopeShare: 0.2 }],
    branches: [
      ...[1, 2, 3, 4, 5].map((number) => run("supply", number, 0.2, number === 1 ? "room-1" : HOUSE)),
      run("return", 1, 1, HOUSE),
    ],
    airHandler: {
      flowAtZeroCfm: fanFlowCfm + 100,
      slopeCfmPerPa: 1,
      passage: pathAt(fanFlowCfm, 40, 0.5),
      filter: pathAt(fanFlowCfm, 50, 0.5),
      heatingOutputBtuPerH: 50 * fanFlowCfm,
    },
    leaks: leaks.map(
      ([side, zoneId, flowCfm25, branchId], index): TrueLeak => ({
        id: `leak-${index + 1}`,
        side,
        label: `Leak ${index + 1}`,
        zoneId,
        flowCfm25,
        exponent: 0.6,
        ...(branchId ? { branchId } : {}),
      }),
    ),
  };
}

function zone(kind: PlaceKind, label: string, toHouseCfm25: Cfm, toOutsideCfm25: Cfm): TrueZone {
  return {
    id: kind,
    kind,
    label,
    toHouse: { flowCfm25: toHouseCfm25, exponent: 0.6 },
    toOutside: { flowCfm25: toOutsideCfm25, exponent: 0.55 },
  };
}
