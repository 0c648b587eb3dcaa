import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { balanceTemperature, degreeDayLoads } from "#lib/loads/building-loads.ts";
import { buildingUa } from "#lib/loads/building-ua.ts";
import { envelopeAreas, vintageOf } from "#lib/loads/building-vintages.ts";
import { internalGains } from "#lib/loads/internal-gains.ts";
import { naturalInfiltration } from "#lib/loads/natural-infiltration.ts";
import { expectClose } from "#tests/expect-close.ts";

const HOUSE = { conditionedFloorAreaFt2: 2000, storeysCount: 1, builtYear: 1965, airDensityLbPerFt3: 0.075 };
const byHand = { relativeTolerance: 1e-3, reason: "by hand to four figures" };

describe("heat loss coefficient of a house", () => {
  it("derived: surfaces of a 2,000 ft² one-story house, by hand", () => {
    const areas = envelopeAreas(HOUSE);
    // Width √(2000/1.5) = 36.51, length 54.77, perimeter 182.57; walls 1551.9 less 300 of windows.
    expectClose({ actual: areas.wallFt2, expected: 1251.9, ...byHand });
    expectClose({ actual: areas.volumeFt3, expected: 17000, ...byHand });
  });

  it("derived: sums surfaces and infiltration, by hand for 1965", () => {
    const ua = buildingUa(HOUSE);
    // 1251.9·0.10 + 2000·0.05 + 2000·0.09 + 300·0.70; 10/h·17,000/60/17 = 166.67 cfm at 1.08 Btu/(h·cfm·°F).
    expectClose({ actual: ua.transmissionBtuPerHF, expected: 615.19, ...byHand });
    expectClose({ actual: ua.infiltrationCfm, expected: 166.67, ...byHand });
    expectClose({ actual: ua.infiltrationBtuPerHF, expected: 180.0, ...byHand });
    expectClose({ actual: ua.uaBtuPerHF, expected: 795.19, ...byHand });
    expect(ua.tightness).toBe("usual for its age");
    expect(buildingUa({ ...HOUSE, envelopeLeakageCfm50: 1700 }).tightness).toBe("measured");
    expectClose({
      actual: buildingUa({ ...HOUSE, envelopeLeakageCfm50: 1700 }).infiltrationCfm,
      expected: 100,
      ...byHand,
    });
  });

  it("falls from vintage to vintage, and grows with floor area and leakage", () => {
    const uaOf = (part: Partial<typeof HOUSE> & { envelopeLeakageCfm50?: number }) =>
      buildingUa({ ...HOUSE, ...part }).uaBtuPerHF;
    const years = [1900, 1950, 1970, 1990, 2005, 2020];
    years.slice(1).forEach((builtYear, index) => {
      expect(uaOf({ builtYear })).toBeLessThan(uaOf({ builtYear: years[index]! }));
    });
    fc.assert(
      fc.property(fc.double({ min: 200, max: 20000, noNaN: true }), (conditionedFloorAreaFt2) => {
        expect(uaOf({ conditionedFloorAreaFt2: conditionedFloorAreaFt2 * 1.1 })).toBeGreaterThan(
          uaOf({ conditionedFloorAreaFt2 }),
        );
      }),
    );
    expect(uaOf({ envelopeLeakageCfm50: 4000 })).toBeGreaterThan(uaOf({ envelopeLeakageCfm50: 2000 }));
    expect(vintageOf(1939)).not.toBe(vintageOf(1940));
  });

  it("refuses what is no house", () => {
    expect(() => buildingUa({ ...HOUSE, conditionedFloorAreaFt2: 0 })).toThrow("Conditioned floor area");
    expect(() => buildingUa({ ...HOUSE, storeysCount: Number.NaN })).toThrow("Stories");
    expect(() => naturalInfiltration({ envelopeLeakageCfm50: -1, storeysCount: 1 })).toThrow("House air leakage");
  });
});

describe("loads by degree days", () => {
  it("derived: gains of 4,000 Btu/h on 500 Btu/(h·°F) carry a house at 70 °F down to 62 °F", () => {
    expect(balanceTemperature({ setpointF: 70, gainsBtuPerH: 4000, uaBtuPerHF: 500 }).balanceF).toBe(62);
    expect(() => balanceTemperature({ setpointF: 70, gainsBtuPerH: 4000, uaBtuPerHF: 0 })).toThrow(
      "Heat loss coefficient",
    );
  });

  it("derived: 500 Btu/(h·°F) over 5,000 °F·d is 60 million Btu; half of it sensible doubles a cooling load", () => {
    expect(degreeDayLoads({ uaBtuPerHF: 500, monthlyDegreeDays: [3000, 2000] }).yearlyBtu).toBe(60e6);
    expect(degreeDayLoads({ uaBtuPerHF: 500, monthlyDegreeDays: [100], sensibleShare: 0.5 }).yearlyBtu).toBe(2.4e6);
  });

  it("derived: internal gains of 2,000 ft² and three bedrooms, by hand", () => {
    // (17,900 + 47,600 + 12,312)/24
    const { internalGainsBtuPerH } = internalGains({ conditionedFloorAreaFt2: 2000, bedroomsCount: 3 });
    expectClose({ actual: internalGainsBtuPerH, expected: 3242.2, ...byHand });
  });
});
