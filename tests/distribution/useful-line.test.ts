import { describe, expect, it } from "vitest";
import { moistAirEnthalpy } from "#lib/air/moist-air.ts";
import { createAirPath } from "#lib/distribution/air-path.ts";
import { createPreparedDucts, prepareDucts, type RunningDucts } from "#lib/distribution/duct-system.ts";
import { followCooling } from "#lib/distribution/follow-cooling.ts";
import { followHeating } from "#lib/distribution/follow-heating.ts";
import { fillCoolingLine } from "#lib/distribution/useful-cooling-line.ts";
import { fillHeatingLine } from "#lib/distribution/useful-heating-line.ts";
import { createUsefulLine, fillUsefulHeatPump, usefulInBin } from "#lib/distribution/useful-line.ts";
import type { WeatherColumns, ZoneLines } from "#lib/distribution/weather-columns.ts";
import { expectClose } from "#tests/expect-close.ts";

const of = (...values: number[]) => Float64Array.of(...values);

/** Attic, basement, rooms: straight lines of the weather. */
const zones: ZoneLines = {
  constant: of(5.1, 38.5, 72),
  outdoor: of(0.92, 0.18, 0),
  sun: of(0.195, 0, 0),
  ground: of(0, 0.27, 0),
  night: of(-2.4, 0, 0),
  outdoorMoistureShare: of(1, 0.3, 0),
};
const ducts: RunningDucts = {
  supplyConductanceBtuPerHF: of(84, 31, 6),
  returnConductanceBtuPerHF: of(12, 22, 0),
  supplyLeakageCfm: of(77, 41, 20),
  returnLeakageCfm: of(52, 12, 5),
  regainFactor: of(0.1, 0.5, 1),
  roomAirShare: of(0, 0.7, 1),
  outdoorAirShare: of(0, 0.3, 0),
  fanFlowCfm: 1080,
  airDensityLbPerFt3: 0.071,
  extraInfiltrationCfm: 31,
  cyclingFactor: 0.957,
};
const weather: WeatherColumns = {
  count: 5,
  temperatureF: of(-8, 27.5, 52.5, 77.5, 102.5),
  sunBtuPerHFt2: of(0, 40, 0, 130, 260),
  groundF: of(39, 44, 52, 61, 66),
  isNight: of(1, 0, 1, 0, 0),
  humidityRatio: of(0.0007, 0.0024, 0.0061, 0.0142, 0.0117),
  enthalpyBtuPerLb: of(
    moistAirEnthalpy(-8, 0.0007),
    moistAirEnthalpy(27.5, 0.0024),
    moistAirEnthalpy(52.5, 0.0061),
    moistAirEnthalpy(77.5, 0.0142),
    moistAirEnthalpy(102.5, 0.0117),
  ),
};
const capacityBtuPerH = of(19000, 26000, 33000, 36000, 34000);
const indoorTemperatureF = 72;
const indoorHumidityRatio = 0.0088;
const indoorEnthalpyBtuPerLb = moistAirEnthalpy(indoorTemperatureF, indoorHumidityRatio);
const sensibleHeatRatio = 0.77;
const infiltrationMoistureShare = 0.6;
const identical = {
  relativeTolerance: 1e-11,
  reason: "the same trip of the air, gathered into a straight line",
} as const;

/** The places' air in one bin, from the lines, written out. */
function around(bin: number) {
  const zoneTemperatureF = zones.constant.map(
    (constant, p) =>
      constant +
      zones.outdoor[p]! * weather.temperatureF[bin]! +
      zones.sun[p]! * weather.sunBtuPerHFt2[bin]! +
      zones.ground[p]! * weather.groundF[bin]! +
      zones.night[p]! * weather.isNight[bin]!,
  );
  return {
    indoorTemperatureF,
    outdoorTemperatureF: weather.temperatureF[bin]!,
    zoneTemperatureF,
    indoorEnthalpyBtuPerLb,
    outdoorEnthalpyBtuPerLb: moistAirEnthalpy(
      weather.temperatureF[bin]!,
      infiltrationMoistureShare * weather.humidityRatio[bin]! + (1 - infiltrationMoistureShare) * indoorHumidityRatio,
    ),
    zoneEnthalpyBtuPerLb: zoneTemperatureF.map((temperatureF, p) => {
      const outdoorShare = zones.outdoorMoistureShare[p]!;
      const humidity = outdoorShare * weather.humidityRatio[bin]! + (1 - outdoorShare) * indoorHumidityRatio;
      return moistAirEnthalpy(temperatureF, humidity);
    }),
  };
}

const prepared = createPreparedDucts(3);
prepareDucts(ducts, prepared);
const bins = Array.from({ length: weather.count }, (_, bin) => bin);

describe("the straight line of a season", () => {
  it.each([9000, 36000])("gives what following the air gives, heating with %i Btu/h, in every bin", (capacity) => {
    const useful = createUsefulLine();
    const path = createAirPath();
    fillHeatingLine({ ducts: prepared, zones, indoorTemperatureF, out: useful });
    for (const bin of bins) {
      followHeating(prepared, around(bin), capacity, path);
      const actual = usefulInBin(useful, weather, bin, capacity);
      expectClose({ actual, expected: path.usefulBtuPerH, scale: capacity, ...identical });
    }
  });

  it("gives what following the air gives, with a heat pump whose output follows the weather", () => {
    const useful = createUsefulLine();
    const out = new Float64Array(weather.count);
    const path = createAirPath();
    fillHeatingLine({ ducts: prepared, zones, indoorTemperatureF, out: useful });
    fillUsefulHeatPump({ useful, weather, capacityBtuPerH, out });
    for (const bin of bins) {
      followHeating(prepared, around(bin), capacityBtuPerH[bin]!, path);
      expectClose({ actual: out[bin]!, expected: path.usefulBtuPerH, scale: capacityBtuPerH[bin]!, ...identical });
    }
  });

  it.each([9000, 34000])(
    "gives what following the air gives, cooling with moisture and %i Btu/h, in every bin",
    (capacity) => {
      const useful = createUsefulLine();
      const path = createAirPath();
      const rooms = { indoorTemperatureF, indoorEnthalpyBtuPerLb, indoorHumidityRatio };
      fillCoolingLine({ ducts: prepared, zones, ...rooms, sensibleHeatRatio, infiltrationMoistureShare, out: useful });
      for (const bin of bins) {
        followCooling(prepared, around(bin), { capacityBtuPerH: capacity, sensibleHeatRatio }, path);
        const actual = usefulInBin(useful, weather, bin, capacity);
        expectClose({ actual, expected: path.usefulBtuPerH, scale: capacity, ...identical });
      }
    },
  );

  it("knows what one more Btu in the air is worth", () => {
    const useful = createUsefulLine();
    const path = createAirPath();
    fillHeatingLine({ ducts: prepared, zones, indoorTemperatureF, out: useful });
    followHeating(prepared, around(0), 20000, path);
    const before = path.usefulBtuPerH;
    followHeating(prepared, around(0), 30000, path);
    const actual = useful.perCapacityFactor;
    expectClose({ actual, expected: (path.usefulBtuPerH - before) / 10000, ...identical });
    expect(actual).toBeLessThan(1);
  });

  it("leaves nothing of an earlier draw behind", () => {
    const useful = createUsefulLine();
    const again = createPreparedDucts(3);
    prepareDucts({ ...ducts, fanFlowCfm: 700, regainFactor: of(1, 1, 1) }, again);
    const rooms = { indoorTemperatureF, indoorEnthalpyBtuPerLb, indoorHumidityRatio };
    fillCoolingLine({ ducts: again, zones, ...rooms, sensibleHeatRatio, infiltrationMoistureShare, out: useful });
    prepareDucts(ducts, again);
    expect(again).toEqual(prepared);
    fillHeatingLine({ ducts: again, zones, indoorTemperatureF, out: useful });
    const fresh = createUsefulLine();
    fillHeatingLine({ ducts: prepared, zones, indoorTemperatureF, out: fresh });
    expect(useful).toEqual(fresh);
  });
});

describe("ducts that have no answer", () => {
  it.each([
    ["no flow", { fanFlowCfm: 0 }, "#/fanFlowCfm"],
    ["a flow that is no number", { fanFlowCfm: Number.NaN }, "#/fanFlowCfm"],
    ["a supply that leaks its whole flow", { supplyLeakageCfm: of(1080, 0, 0) }, "#/supplyLeakageCfm"],
    ["a return that leaks more than its flow", { returnLeakageCfm: of(900, 200, 0) }, "#/returnLeakageCfm"],
    ["a duct without resistance", { supplyConductanceBtuPerHF: of(540 / 0, 0, 0) }, "#/supplyConductanceBtuPerHF"],
    ["a surface that is no number", { returnConductanceBtuPerHF: of(Number.NaN, 0, 0) }, "#/supplyConductanceBtuPerHF"],
    ["no density", { airDensityLbPerFt3: 0 }, "#/airDensityLbPerFt3"],
  ] as const)("refuses %s", (_, change, pointer) => {
    const out = createPreparedDucts(3);
    expect(() => prepareDucts({ ...ducts, ...change }, out)).toThrowError(
      expect.objectContaining({ errors: [expect.objectContaining({ pointer })] }),
    );
  });
});
