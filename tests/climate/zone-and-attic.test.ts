import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ATTIC_DEFAULTS, atticTemperature } from "#lib/climate/attic-temperature.ts";
import { zoneTemperature } from "#lib/climate/zone-temperature.ts";
import { expectClose } from "#tests/expect-close.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const exact = { relativeTolerance: 1e-12, reason: "exact arithmetic" } as const;

describe("zone temperature [iso-13789, form of]", () => {
  it("is the house's at factor 0, the surroundings' at 1, and between them otherwise", () => {
    fc.assert(
      fc.property(
        between(60, 80),
        between(-30, 110),
        between(30, 70),
        between(0, 1),
        between(0, 1),
        (indoor, outdoor, ground, factor, share) => {
          const at = (unconditionedFactor: number) =>
            zoneTemperature({
              indoorTemperatureF: indoor,
              outdoorTemperatureF: outdoor,
              unconditionedFactor,
              groundTemperatureF: ground,
              groundShare: share,
            }).zoneTemperatureF;
          const surroundings = (1 - share) * outdoor + share * ground;
          expectClose({ actual: at(0), expected: indoor, ...exact });
          expectClose({ actual: at(1) - surroundings, expected: 0, scale: 100, ...exact });
          expect(at(factor)).toBeGreaterThanOrEqual(Math.min(indoor, surroundings) - 1e-9);
          expect(at(factor)).toBeLessThanOrEqual(Math.max(indoor, surroundings) + 1e-9);
        },
      ),
    );
  });

  it("refuses a ground share without the ground's temperature, and a factor that no place has", () => {
    const winter = { indoorTemperatureF: 70, outdoorTemperatureF: 20, unconditionedFactor: 0.5 };
    expect(() => zoneTemperature({ ...winter, groundShare: 0.4 })).toThrowError(
      expect.objectContaining({ errors: [expect.objectContaining({ pointer: "#/groundTemperatureF" })] }),
    );
    expect(() => zoneTemperature({ ...winter, unconditionedFactor: 1.5 })).toThrow("Unconditioned-space factor");
    expect(() => zoneTemperature({ ...winter, outdoorTemperatureF: Number.NaN })).toThrow("Outdoor temperature");
  });
});

describe("attic temperature [derived: a balance over 1 ft²]", () => {
  const weather = fc.record({
    outdoorTemperatureF: between(-20, 110),
    indoorTemperatureF: between(65, 80),
    solarBtuPerHFt2: between(0, 330),
    roofAbsorptance: between(0.3, 0.95),
    ceilingRValue: between(2, 60),
    roofUValue: between(0.1, 0.8),
    ventilationCfmPerFt2: between(0, 1),
    skyCoolingF: between(0, 10),
  });

  it("balances: what the ceiling, the roof and the vents bring adds up to nothing", () => {
    fc.assert(
      fc.property(weather, (given) => {
        const { atticTemperatureF: t } = atticTemperature(given);
        const solAir =
          given.outdoorTemperatureF + (given.roofAbsorptance * given.solarBtuPerHFt2) / 3 - given.skyCoolingF;
        const fluxes = [
          (given.indoorTemperatureF - t) / given.ceilingRValue,
          given.roofUValue * (solAir - t),
          60 * 0.075 * 0.24 * given.ventilationCfmPerFt2 * (given.outdoorTemperatureF - t),
        ];
        expectClose({
          actual: fluxes.reduce((sum, each) => sum + each, 0),
          expected: 0,
          scale: 100,
          relativeTolerance: 1e-11,
          reason: "a balance of three heat flows of up to 100 Btu/(h·ft²)",
        });
      }),
    );
  });

  it("gets hotter with sun and a darker roof, cooler under a clear night sky, closer to outdoors with vents", () => {
    const noon = { outdoorTemperatureF: 90, indoorTemperatureF: 76, solarBtuPerHFt2: 240 };
    const at = (change: Partial<Parameters<typeof atticTemperature>[0]>) =>
      atticTemperature({ ...noon, ...change }).atticTemperatureF;
    expect(at({ solarBtuPerHFt2: 300 })).toBeGreaterThan(at({}));
    expect(at({ roofAbsorptance: ATTIC_DEFAULTS.lightRoofAbsorptance.value })).toBeLessThan(at({}) - 10);
    expect(at({ ventilationCfmPerFt2: 1 })).toBeLessThan(at({}));
    const night = { solarBtuPerHFt2: 0, outdoorTemperatureF: 20 };
    const clear = ATTIC_DEFAULTS.clearNightCoolingF.value;
    expect(at({ ...night, skyCoolingF: clear })).toBeLessThan(at(night));
    expect(at({ ...night, skyCoolingF: clear })).toBeLessThan(20);
  });

  it("refuses a ceiling without resistance and sun below 0", () => {
    const given = { outdoorTemperatureF: 90, indoorTemperatureF: 76 };
    expect(() => atticTemperature({ ...given, ceilingRValue: 0 })).toThrow("Ceiling insulation");
    expect(() => atticTemperature({ ...given, solarBtuPerHFt2: -1 })).toThrow("Sun on the roof");
  });
});
