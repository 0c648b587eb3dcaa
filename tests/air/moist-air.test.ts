import fc from "fast-check";
import psychrolib from "psychrolib";
import { describe, expect, it } from "vitest";
import { humidityRatioAt, moistAir, moistAirEnthalpy, saturationPressure } from "#lib/air/moist-air.ts";
import { expectClose } from "#tests/expect-close.ts";

// The library's own IP constants, rounded apart from the SI ones that we use: an independent implementation.
psychrolib.SetUnitSystem(psychrolib.IP);
/** lb of 453.59237 g at 9.80665 m/s² on an inch of 25.4 mm. */
const PASCALS_PER_PSI = (0.45359237 * 9.80665) / 0.0254 ** 2;

const TEMPERATURES_F = Array.from({ length: 37 }, (_, i) => -40 + 5 * i);
const HUMIDITIES = [0, 0.1, 0.3, 0.5, 0.7, 0.9, 1];
const PRESSURES_PA = [60000, 84000, 101325, 105000];

describe("moistAir against psychrolib [psychrolib]", () => {
  it("agrees on the saturation pressure within 2e-5 from −40 to 140 °F, over ice and water", () => {
    for (const temperatureF of TEMPERATURES_F) {
      expectClose({
        actual: saturationPressure(temperatureF) / PASCALS_PER_PSI,
        expected: psychrolib.GetSatVapPres(temperatureF),
        relativeTolerance: 2e-5,
        reason: "the same correlation with coefficients rounded in two systems of units",
      });
    }
  });

  it("agrees on humidity ratio, enthalpy and density within 1e-4 over the whole range", () => {
    let compared = 0;
    for (const dryBulbF of TEMPERATURES_F) {
      for (const relativeHumidity of HUMIDITIES) {
        for (const pressurePa of PRESSURES_PA) {
          const ours = moistAir({ dryBulbF, relativeHumidity, pressurePa });
          const psi = pressurePa / PASCALS_PER_PSI;
          const theirRatio = psychrolib.GetHumRatioFromRelHum(dryBulbF, relativeHumidity, psi);
          const relativeTolerance = 1e-4;
          const reason = "constants rounded in two systems of units; near 140 °F and saturated they add up";
          // At zero humidity the library returns its floor of 1e-7, we return 0.
          const ratio = { actual: ours.humidityRatio, expected: theirRatio, relativeTolerance, reason };
          if (relativeHumidity > 0) expectClose(ratio);
          else expect(ours.humidityRatio).toBe(0);
          expectClose({
            // Both from a datum below the range, so that no value is near zero.
            actual: ours.enthalpyBtuPerLb + 20,
            expected: psychrolib.GetMoistAirEnthalpy(dryBulbF, theirRatio) + 20,
            relativeTolerance,
            reason,
          });
          expectClose({
            actual: ours.densityLbPerFt3,
            expected: psychrolib.GetMoistAirDensity(dryBulbF, theirRatio, psi),
            relativeTolerance,
            reason,
          });
          compared += 1;
        }
      }
    }
    expect(compared).toBe(37 * 7 * 4);
  });
});

describe("moistAir", () => {
  it("goes from relative humidity to humidity ratio and back", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -40, max: 140, noNaN: true }),
        fc.double({ min: 0.001, max: 1, noNaN: true }),
        fc.double({ min: 60000, max: 110000, noNaN: true }),
        (dryBulbF, relativeHumidity, pressurePa) => {
          const { humidityRatio } = moistAir({ dryBulbF, relativeHumidity, pressurePa });
          const back = moistAir({ dryBulbF, humidityRatio: humidityRatio * (1 - 1e-12), pressurePa });
          expectClose({
            actual: back.relativeHumidity,
            expected: relativeHumidity,
            relativeTolerance: 1e-9,
            reason: "a round trip through two closed forms",
          });
          expect(moistAirEnthalpy(dryBulbF, humidityRatio)).toBe(
            moistAir({ dryBulbF, relativeHumidity, pressurePa }).enthalpyBtuPerLb,
          );
          expect(humidityRatioAt(dryBulbF, relativeHumidity, pressurePa)).toBe(humidityRatio);
        },
      ),
    );
  });

  it("is lighter and holds more heat the more humid it is", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -40, max: 140, noNaN: true }),
        fc.double({ min: 0, max: 0.98, noNaN: true }),
        (dryBulbF, share) => {
          const drier = moistAir({ dryBulbF, relativeHumidity: share });
          const wetter = moistAir({ dryBulbF, relativeHumidity: share + 0.02 });
          expect(wetter.densityLbPerFt3).toBeLessThan(drier.densityLbPerFt3);
          expect(wetter.enthalpyBtuPerLb).toBeGreaterThan(drier.enthalpyBtuPerLb);
        },
      ),
    );
  });

  it("refuses no humidity, two humidities, more than saturation, and what is outside the range", () => {
    expect(() => moistAir({ dryBulbF: 70 })).toThrow("Exactly one");
    expect(() => moistAir({ dryBulbF: 70, humidityRatio: 0.01, relativeHumidity: 0.5 })).toThrow("Exactly one");
    expect(() => moistAir({ dryBulbF: 70, humidityRatio: 0.03 })).toThrow("#/humidityRatio");
    expect(() => moistAir({ dryBulbF: 70, relativeHumidity: 1.01 })).toThrow("#/relativeHumidity");
    expect(() => moistAir({ dryBulbF: 70, relativeHumidity: Number.NaN })).toThrow("#/relativeHumidity");
    for (const dryBulbF of [-41, 141, Number.NaN])
      expect(() => moistAir({ dryBulbF, relativeHumidity: 0.5 })).toThrow("#/dryBulbF");
    expect(() => moistAir({ dryBulbF: 70, relativeHumidity: 0.5, pressurePa: 14.7 })).toThrow("#/pressurePa");
  });
});
