import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { airflowAfterSealing } from "#lib/distribution/airflow-after-sealing.ts";
import { expectClose } from "#tests/expect-close.ts";

const house = {
  fanFlowCfm: 1200,
  supplyStaticPa: 60,
  returnStaticPa: 70,
  supplyLeakageBeforeCfm: 120,
  returnLeakageBeforeCfm: 120,
};

const drawnHouse = fc
  .record({
    fanFlowCfm: fc.double({ min: 300, max: 3000, noNaN: true }),
    supplyStaticPa: fc.double({ min: 5, max: 250, noNaN: true }),
    returnStaticPa: fc.double({ min: 5, max: 250, noNaN: true }),
    supplyBefore: fc.double({ min: 0, max: 0.9, noNaN: true }),
    returnBefore: fc.double({ min: 0, max: 0.9, noNaN: true }),
    supplyLeft: fc.double({ min: 0, max: 1, noNaN: true }),
    returnLeft: fc.double({ min: 0, max: 1, noNaN: true }),
    fanSlopeCfmPerPa: fc.double({ min: 0, max: 10, noNaN: true }),
  })
  .map(({ supplyBefore, returnBefore, supplyLeft, returnLeft, ...rest }) => ({
    ...rest,
    supplyLeakageBeforeCfm: supplyBefore * rest.fanFlowCfm,
    returnLeakageBeforeCfm: returnBefore * rest.fanFlowCfm,
    supplyLeakageAfterCfm: supplyBefore * supplyLeft * rest.fanFlowCfm,
    returnLeakageAfterCfm: returnBefore * returnLeft * rest.fanFlowCfm,
  }));

describe("airflowAfterSealing", () => {
  it("changes nothing when nothing is sealed [derived]", () => {
    const after = airflowAfterSealing({ ...house, supplyLeakageAfterCfm: 120, returnLeakageAfterCfm: 120 });
    const reason = "the equations hold exactly at the state before";
    expectClose({ actual: after.fanFlowCfm, expected: 1200, relativeTolerance: 1e-12, reason });
    expectClose({ actual: after.externalStaticPa, expected: 130, relativeTolerance: 1e-12, reason });
    expectClose({ actual: after.deliveredAfterCfm, expected: 1080, relativeTolerance: 1e-12, reason });
  });

  it("meets both sides' equations and the fan's [derived: put back into the equations]", () => {
    fc.assert(
      fc.property(drawnHouse, (drawn) => {
        const after = airflowAfterSealing(drawn);
        const side = (staticPa: number, before: number, leftover: number, nowPa: number) =>
          (drawn.fanFlowCfm - before) * Math.sqrt(nowPa / staticPa) + leftover * (nowPa / staticPa) ** 0.6;
        const supply = side(
          drawn.supplyStaticPa,
          drawn.supplyLeakageBeforeCfm,
          drawn.supplyLeakageAfterCfm,
          after.supplyStaticPa,
        );
        const back = side(
          drawn.returnStaticPa,
          drawn.returnLeakageBeforeCfm,
          drawn.returnLeakageAfterCfm,
          after.returnStaticPa,
        );
        const fan =
          drawn.fanFlowCfm -
          drawn.fanSlopeCfmPerPa * (after.externalStaticPa - drawn.supplyStaticPa - drawn.returnStaticPa);
        const reason = "the iteration ends at 1e-13";
        for (const actual of [supply, back, fan]) {
          expectClose({ actual, expected: after.fanFlowCfm, relativeTolerance: 1e-9, reason });
        }
      }),
    );
  });

  it("sealing never lowers the static pressure, never raises the fan flow, and a constant-flow fan delivers more", () => {
    fc.assert(
      fc.property(drawnHouse, (drawn) => {
        const after = airflowAfterSealing(drawn);
        expect(after.externalStaticPa).toBeGreaterThanOrEqual(
          (drawn.supplyStaticPa + drawn.returnStaticPa) * (1 - 1e-9),
        );
        expect(after.fanFlowCfm).toBeLessThanOrEqual(drawn.fanFlowCfm * (1 + 1e-9));
        const constant = airflowAfterSealing({ ...drawn, fanSlopeCfmPerPa: 0 });
        expect(constant.fanFlowCfm).toBe(drawn.fanFlowCfm);
        expect(constant.deliveredAfterCfm).toBeGreaterThanOrEqual(constant.deliveredBeforeCfm * (1 - 1e-9));
      }),
    );
  });

  it("can deliver less when only the return is sealed and the fan is steep: a fact of physics, not a fault", () => {
    const after = airflowAfterSealing({
      ...house,
      returnLeakageBeforeCfm: 400,
      returnLeakageAfterCfm: 0,
      supplyLeakageAfterCfm: 120,
      fanSlopeCfmPerPa: 5,
    });
    expect(after.deliveredAfterCfm).toBeLessThan(after.deliveredBeforeCfm);
  });

  it("warns above the nameplate static pressure, and only there", () => {
    const sealed = { ...house, supplyLeakageAfterCfm: 30, returnLeakageAfterCfm: 30 };
    expect(airflowAfterSealing({ ...sealed, nameplateStaticPa: 125 }).notes[0]!.code).toBe("static-above-nameplate");
    expect(airflowAfterSealing({ ...sealed, nameplateStaticPa: 200 }).notes).toEqual([]);
    expect(airflowAfterSealing(sealed).notes).toEqual([]);
  });

  it("refuses leaks as large as the fan flow, and pressures that are none", () => {
    const sealed = { ...house, supplyLeakageAfterCfm: 30, returnLeakageAfterCfm: 30 };
    expect(() => airflowAfterSealing({ ...sealed, supplyLeakageBeforeCfm: 1200 })).toThrow("below the fan flow");
    for (const bad of [0, -60, Number.NaN]) {
      expect(() => airflowAfterSealing({ ...sealed, supplyStaticPa: bad })).toThrow("above 0");
      expect(() => airflowAfterSealing({ ...sealed, fanFlowCfm: bad })).toThrow("above 0");
    }
    expect(() => airflowAfterSealing({ ...sealed, fanSlopeCfmPerPa: -1 })).toThrow("Slope");
  });
});
