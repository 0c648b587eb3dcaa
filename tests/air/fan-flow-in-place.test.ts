import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { matchedPressureAirflow } from "#lib/air/matched-pressure-airflow.ts";
import { temperatureRiseAirflow } from "#lib/air/temperature-rise-airflow.ts";
import { expectClose } from "#tests/expect-close.ts";

const positive = (max: number) => fc.double({ min: 1, max, noNaN: true });

describe("temperatureRiseAirflow", () => {
  it("conserves energy: what the flow carries is what was put in [derived]", () => {
    fc.assert(
      fc.property(positive(200000), fc.double({ min: 2, max: 150, noNaN: true }), (outputBtuPerH, temperatureRiseF) => {
        const { flowCfm } = temperatureRiseAirflow({ outputBtuPerH, temperatureRiseF, airDensityLbPerFt3: 0.06 });
        const carried = flowCfm * 60 * 0.06 * 0.24 * temperatureRiseF;
        expectClose({
          actual: carried,
          expected: outputBtuPerH,
          relativeTolerance: 1e-12,
          reason: "the balance itself",
        });
      }),
    );
  });

  it("refuses a rise that no furnace has, and what is no number", () => {
    for (const temperatureRiseF of [0, -40, 151, Number.NaN]) {
      expect(() => temperatureRiseAirflow({ outputBtuPerH: 64000, temperatureRiseF })).toThrow("#/temperatureRiseF");
    }
    expect(() => temperatureRiseAirflow({ outputBtuPerH: Number.NaN, temperatureRiseF: 40 })).toThrow(
      "#/outputBtuPerH",
    );
    expect(() => temperatureRiseAirflow({ outputBtuPerH: 1, temperatureRiseF: 40, airDensityLbPerFt3: 0 })).toThrow(
      "#/airDensityLbPerFt3",
    );
  });
});

describe("matchedPressureAirflow", () => {
  it("is the device's flow where the pressures match, and grows with the normal pressure [derived]", () => {
    fc.assert(
      fc.property(positive(3000), positive(200), (deviceFlowCfm, pressurePa) => {
        const at = (normalPressurePa: number) =>
          matchedPressureAirflow({ deviceFlowCfm, normalPressurePa, devicePressurePa: pressurePa }).flowCfm;
        expect(at(pressurePa)).toBe(deviceFlowCfm);
        expect(at(pressurePa * 1.2)).toBeGreaterThan(deviceFlowCfm);
      }),
    );
  });

  it("refuses pressures too far apart to trust", () => {
    const from = (devicePressurePa: number) => () =>
      matchedPressureAirflow({ deviceFlowCfm: 900, normalPressurePa: 80, devicePressurePa });
    for (const bad of [20, 5, 0, -40, Number.NaN]) expect(from(bad)).toThrow("#/devicePressurePa");
    expect(from(21)).not.toThrow();
  });
});
