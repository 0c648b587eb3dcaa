import { describe, expect, it } from "vitest";
import { carbonAvoided, FUEL_CO2 } from "#lib/savings/carbon.ts";
import { expectClose } from "#tests/expect-close.ts";

const NOTHING = { electricityKWh: 0, naturalGasTherms: 0, propaneGallons: 0, fuelOilGallons: 0 };

describe("carbon avoided", () => {
  it("derived: each fuel by its factor, added up", () => {
    const saved = { electricityKWh: 1000, naturalGasTherms: 100, propaneGallons: 10, fuelOilGallons: 10 };
    expectClose({
      actual: carbonAvoided({ saved, gridLbPerKWh: 0.8 }).co2Lb,
      // 800 + 1,170 + 127 + 224
      expected: 2321,
      relativeTolerance: 1e-9,
      reason: "by hand, exact",
    });
    expect(carbonAvoided({ saved: { ...NOTHING, electricityKWh: -100 }, gridLbPerKWh: 1 }).co2Lb).toBe(-100);
  });

  it("eia-co2: 117.00, 139.05 and 161.30 lb/MMBtu at the heat each unit holds", () => {
    const reason = "published to three or four figures";
    const perMMBtu = [
      [FUEL_CO2.naturalGasLbPerTherm.value / 0.1, 117.0],
      [FUEL_CO2.propaneLbPerGallon.value / 0.0913, 139.05],
      [FUEL_CO2.fuelOilLbPerGallon.value / 0.1389, 161.3],
    ] as const;
    for (const [actual, expected] of perMMBtu) expectClose({ actual, expected, relativeTolerance: 1e-3, reason });
  });

  it("refuses a factor a thousand times too large", () => {
    expect(() => carbonAvoided({ saved: NOTHING, gridLbPerKWh: 770 })).toThrow("0 to 5 lb/kWh, not 770");
    expect(() => carbonAvoided({ saved: NOTHING, gridLbPerKWh: Number.NaN })).toThrow("gridLbPerKWh");
  });
});
