import { describe, expect, it } from "vitest";
import { createAirPath } from "#lib/distribution/air-path.ts";
import { createPreparedDucts, prepareDucts } from "#lib/distribution/duct-system.ts";
import { followCooling } from "#lib/distribution/follow-cooling.ts";
import { followHeating } from "#lib/distribution/follow-heating.ts";

/**
 * A place as a node of heat between rooms and outdoors, and the air that leaks move through it, solved as one steady
 * balance: the regain, the air that comes up into the rooms and the outdoor air drawn in follow from it. Source: derived.
 */
const TO_ROOMS = 320;
const TO_OUTDOORS = 290;
const ROOM_F = 70;
const AIR_HEAT_RATE = 60 * 0.075 * 0.24 * 1000;

interface Case {
  capacity: number;
  outdoorF: number;
  supplyShare: number;
  returnShare: number;
  /** Of the leaked air that the place trades with outdoors. */
  outdoorAirShare: number;
}

const placeAtRest = (outdoorF: number) => (TO_ROOMS * ROOM_F + TO_OUTDOORS * outdoorF) / (TO_ROOMS + TO_OUTDOORS);

/** Heat to the rooms while the equipment runs, beyond what the place gives them at rest, Btu/h; capacity below 0 cools. */
function balanced({ capacity, outdoorF, supplyShare, returnShare, outdoorAirShare }: Case): number {
  const supply = AIR_HEAT_RATE * supplyShare;
  const drawn = AIR_HEAT_RATE * returnShare;
  const madeUpF = (1 - outdoorAirShare) * ROOM_F + outdoorAirShare * outdoorF;
  // Supply air is (1 − r)·room + r·place + capacity/rate, so the place's balance is linear in its temperature.
  const supplyAtNoPlaceF = (1 - returnShare) * ROOM_F + capacity / AIR_HEAT_RATE;
  const placeF =
    (TO_ROOMS * ROOM_F + TO_OUTDOORS * outdoorF + supply * supplyAtNoPlaceF + drawn * madeUpF) /
    (TO_ROOMS + TO_OUTDOORS + supply * (1 - returnShare) + drawn);
  const supplyF = supplyAtNoPlaceF + returnShare * placeF;
  return (
    AIR_HEAT_RATE * (1 - supplyShare) * (supplyF - ROOM_F) +
    supply * (1 - outdoorAirShare) * (placeF - ROOM_F) +
    TO_ROOMS * (placeF - placeAtRest(outdoorF))
  );
}

const of = (value: number) => Float64Array.of(value);

function byEngine(test: Case, trades: boolean): number {
  const prepared = createPreparedDucts(1);
  prepareDucts(
    {
      supplyConductanceBtuPerHF: of(0),
      returnConductanceBtuPerHF: of(0),
      supplyLeakageCfm: of(1000 * test.supplyShare),
      returnLeakageCfm: of(1000 * test.returnShare),
      regainFactor: of(TO_ROOMS / (TO_ROOMS + TO_OUTDOORS)),
      roomAirShare: of(trades ? 1 - test.outdoorAirShare : 0),
      outdoorAirShare: of(trades ? test.outdoorAirShare : 0),
      fanFlowCfm: 1000,
      airDensityLbPerFt3: 0.075,
      extraInfiltrationCfm: 0,
      cyclingFactor: 1,
    },
    prepared,
  );
  const placeF = placeAtRest(test.outdoorF);
  const dry = (temperatureF: number) => 0.24 * temperatureF;
  const around = {
    indoorTemperatureF: ROOM_F,
    outdoorTemperatureF: test.outdoorF,
    zoneTemperatureF: of(placeF),
    indoorEnthalpyBtuPerLb: dry(ROOM_F),
    outdoorEnthalpyBtuPerLb: dry(test.outdoorF),
    zoneEnthalpyBtuPerLb: of(dry(placeF)),
  };
  const path = createAirPath();
  if (test.capacity > 0) {
    followHeating(prepared, around, test.capacity, path);
    return path.usefulBtuPerH;
  }
  followCooling(prepared, around, { capacityBtuPerH: -test.capacity, sensibleHeatRatio: 1 }, path);
  return -path.usefulBtuPerH;
}

const CASES = [
  ["heating", { capacity: 50_000, outdoorF: 15 }],
  ["cooling", { capacity: -30_000, outdoorF: 98 }],
] as const;

describe.each(CASES)("%s: what leaks do to the air of a place", (_, season) => {
  it.each([0, 0.35, 1])(
    "follows the balance of the place to the first order in the leaks, %s of the air from outdoors",
    (outdoorAirShare) => {
      for (const [supplyShare, returnShare] of [
        [0.001, 0],
        [0, 0.001],
        [0.001, 0.002],
      ] as const) {
        const test = { ...season, supplyShare, returnShare, outdoorAirShare };
        const lost = season.capacity - balanced(test);
        // What is left out is of second order: a hundredth of the loss for leaks of a thousandth.
        expect(Math.abs(season.capacity - byEngine(test, true) - lost)).toBeLessThan(0.01 * Math.abs(lost));
      }
    },
  );

  it("is off by more than a tenth when the place is left as it was", () => {
    const test = { ...season, supplyShare: 0.001, returnShare: 0, outdoorAirShare: 0 };
    const lost = season.capacity - balanced(test);
    expect(Math.abs(season.capacity - byEngine(test, false) - lost)).toBeGreaterThan(0.1 * Math.abs(lost));
  });
});
