import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type FlowLink, LAMINAR_BELOW_PA, type LeakLink, leakFlow, leakSlope } from "#lib/simulate/flow-network.ts";
import { solveNetwork } from "#lib/simulate/solve-network.ts";
import { expectClose } from "#tests/expect-close.ts";

const leak = (id: string, from: string, to: string, coefficient: number, exponent = 0.6): LeakLink => ({
  kind: "leak",
  id,
  from,
  to,
  coefficient,
  exponent,
});
const steady = (id: string, from: string, to: string, flowCfm: number): FlowLink => ({
  kind: "curve-fan",
  id,
  from,
  to,
  flowAtZeroCfm: flowCfm,
  slopeCfmPerPa: 0,
});
const air = { outside: 0 };
const slopeByDifference = (link: LeakLink, pressurePa: number) =>
  (leakFlow(link, pressurePa * (1 + 1e-6)) - leakFlow(link, pressurePa * (1 - 1e-6))) / (2e-6 * pressurePa);

describe("cases with an answer in closed form (derived: power law q = C·P^n)", () => {
  it("one room with a fan: P = (Q/C)^(1/n)", () => {
    const { pressuresPa } = solveNetwork({
      fixedPressuresPa: air,
      links: [leak("envelope", "house", "outside", 100), steady("fan", "outside", "house", 1000)],
    });
    // (1000/100)^(1/0.6) = 10^(5/3) = 46.41588833612779
    expectClose({
      actual: pressuresPa.house!,
      expected: 46.41588833612779,
      relativeTolerance: 1e-11,
      reason: "solved to 1e-9 cfm of 1000",
    });
  });

  it("two equal holes in series share the pressure evenly; with n 0.5 areas share it as the inverse squares", () => {
    const series = (first: number, second: number, exponent: number) =>
      solveNetwork({
        fixedPressuresPa: { outside: 0, house: 50 },
        links: [leak("in", "house", "zone", first, exponent), leak("out", "zone", "outside", second, exponent)],
      }).pressuresPa.zone!;
    const tight = { relativeTolerance: 1e-11, reason: "solved to 1e-9 cfm" };
    expectClose({ actual: series(80, 80, 0.6), expected: 25, ...tight });
    // n 0.5: C1²(50 − z) = C2² z → z = 50·4/(4 + 1) = 40 for C1 = 2·C2
    expectClose({ actual: series(200, 100, 0.5), expected: 40, ...tight });
  });

  it("a fan curve meets a leak: 300 − 2P = 20·√P by the quadratic formula", () => {
    const { pressuresPa, flowsCfm } = solveNetwork({
      fixedPressuresPa: air,
      links: [
        leak("hole", "duct", "outside", 20, 0.5),
        { kind: "curve-fan", id: "fan", from: "outside", to: "duct", flowAtZeroCfm: 300, slopeCfmPerPa: 2 },
      ],
    });
    // 2x² + 20x − 300 = 0 for x = √P: x = (−20 + √2800)/4 = 8.228756555322953
    const root = 8.228756555322953;
    const tight = { relativeTolerance: 1e-11, reason: "solved to 1e-9 cfm of 165" };
    expectClose({ actual: pressuresPa.duct!, expected: root * root, ...tight });
    expectClose({ actual: flowsCfm.fan!, expected: 20 * root, ...tight });
  });

  it("a fan that holds 25 Pa gives what the leak passes at 25 Pa, with the sign of the target", () => {
    const flowAt = (targetPa: number) =>
      solveNetwork({
        fixedPressuresPa: air,
        links: [
          leak("hole", "duct", "outside", 20),
          {
            kind: "holding-fan",
            id: "fan",
            from: "outside",
            to: "duct",
            signal: "duct",
            reference: "outside",
            targetPa,
          },
        ],
      }).flowsCfm.fan!;
    // 20·25^0.6 = 137.97296614612148
    const tight = { relativeTolerance: 1e-12, reason: "closed form" };
    expectClose({ actual: flowAt(25), expected: 137.97296614612148, ...tight });
    expectClose({ actual: flowAt(-25), expected: -137.97296614612148, ...tight });
  });

  it("near zero a leak turns straight, meeting the power law in value and slope", () => {
    const hole = leak("hole", "a", "b", 10);
    expect(leakFlow(hole, 0)).toBe(0);
    const edge = LAMINAR_BELOW_PA;
    const meets = { relativeTolerance: 1e-6, reason: "the two laws meet there" };
    expectClose({ actual: leakFlow(hole, edge * (1 - 1e-9)), expected: 10 * edge ** 0.6, ...meets });
    // Slope of the power law: 0.6·C·P^(−0.4).
    const inner = (leakFlow(hole, edge) - leakFlow(hole, edge * (1 - 1e-7))) / (edge * 1e-7);
    expectClose({ actual: inner, expected: 6 * edge ** -0.4, ...meets });
    expectClose({ actual: leakSlope(hole, edge / 3), expected: slopeByDifference(hole, edge / 3), ...meets });
    expectClose({ actual: leakSlope(hole, 7), expected: slopeByDifference(hole, 7), ...meets });
    const nearZero = { relativeTolerance: 1e-3, reason: "straight at zero, but for a cube" };
    expectClose({ actual: leakFlow(hole, edge / 50) / leakFlow(hole, edge / 100), expected: 2, ...nearZero });
  });
});

const coefficient = fc.double({ min: 1, max: 3000, noNaN: true });
const exponent = fc.double({ min: 0.5, max: 1, noNaN: true });
const flow = fc.double({ min: -2000, max: 2000, noNaN: true });
const hole = fc.tuple(coefficient, exponent);

/** A ring of five nodes, each open to outside, with a fan across it: loops, series and parallel ways at once. */
const ring = (holes: readonly (readonly [number, number])[], fanCfm: number) => ({
  fixedPressuresPa: air,
  links: [
    ...[0, 1, 2, 3, 4].flatMap((k) => [
      leak(`out-${k}`, `n${k}`, "outside", ...holes[k]!),
      leak(`ring-${k}`, `n${k}`, `n${(k + 1) % 5}`, ...holes[k + 5]!),
    ]),
    steady("fan", "n0", "n2", fanCfm),
  ],
});

describe("any network", () => {
  const holes = fc.array(hole, { minLength: 10, maxLength: 10 });

  it("makes and loses no air: every node within 1e-9 of the largest flow (conservation of mass)", () => {
    fc.assert(
      fc.property(holes, flow, (ways, fanCfm) => {
        const { links, ...rest } = ring(ways, fanCfm);
        const { flowsCfm, largestImbalanceCfm } = solveNetwork({ links, ...rest });
        const allowedCfm = 1e-9 * Math.max(1, ...Object.values(flowsCfm).map(Math.abs));
        expect(largestImbalanceCfm).toBeLessThanOrEqual(allowedCfm);
        for (const node of ["n0", "n1", "n2", "n3", "n4"]) {
          const gained = links.reduce((sum, link) => {
            const sign = link.to === node ? 1 : link.from === node ? -1 : 0;
            return sum + sign * flowsCfm[link.id]!;
          }, 0);
          expect(Math.abs(gained)).toBeLessThanOrEqual(1.01 * allowedCfm);
        }
      }),
      { numRuns: 200 },
    );
  });

  it("turns all signs when the fan turns round", () => {
    fc.assert(
      fc.property(holes, flow, (ways, fanCfm) => {
        const [there, back] = [solveNetwork(ring(ways, fanCfm)), solveNetwork(ring(ways, -fanCfm))];
        for (const node of Object.keys(there.pressuresPa)) {
          expect(Math.abs(there.pressuresPa[node]! + back.pressuresPa[node]!)).toBeLessThanOrEqual(
            1e-7 * (1 + Math.abs(there.pressuresPa[node]!)),
          );
        }
      }),
      { numRuns: 100 },
    );
  });

  it("more fan flow never lowers the pressure where it arrives", () => {
    fc.assert(
      fc.property(holes, flow, fc.double({ min: 1, max: 500, noNaN: true }), (ways, fanCfm, moreCfm) => {
        const before = solveNetwork(ring(ways, fanCfm)).pressuresPa.n2!;
        const after = solveNetwork(ring(ways, fanCfm + moreCfm)).pressuresPa.n2!;
        expect(after).toBeGreaterThan(before);
      }),
      { numRuns: 100 },
    );
  });
});

describe("networks without an answer are refused", () => {
  it("a node that hangs free", () => {
    const hanging = { fixedPressuresPa: air, links: [leak("a", "house", "outside", 10), leak("b", "x", "y", 10)] };
    expect(() => solveNetwork(hanging)).toThrow(/“x” has no way to the air outside/);
  });

  it("a fan that blows into a sealed box", () => {
    const sealed = { fixedPressuresPa: air, links: [steady("fan", "outside", "box", 100)] };
    expect(() => solveNetwork(sealed)).toThrow(/“box” has no way/);
  });

  it("a hose that ends nowhere", () => {
    const lost = {
      fixedPressuresPa: air,
      links: [
        leak("hole", "duct", "outside", 20),
        {
          kind: "holding-fan",
          id: "f",
          from: "outside",
          to: "duct",
          signal: "duct",
          reference: "atic",
          targetPa: 25,
        } as const,
      ],
    };
    expect(() => solveNetwork(lost)).toThrow(/atic/);
  });
});
