import { describe, expect, it } from "vitest";
import { z } from "zod";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { defineMethod } from "#lib/methods/method-card.ts";
import { methodResultDocument, runCard, runMethod } from "#lib/methods/run-method.ts";
import { numberField } from "#lib/units/field.ts";

function problemOf(run: () => unknown): InputProblem {
  try {
    run();
  } catch (thrown) {
    if (thrown instanceof InputProblem) return thrown;
    throw thrown;
  }
  throw new Error("nothing was refused");
}

describe("runMethod", () => {
  it("gives the output's fields at the top and the assumptions beside them", () => {
    const document = methodResultDocument(runMethod("guard-band", { upperLimit: 80, standardUncertainty: 6 }));
    expect(document.acceptanceLimit).toBeTypeOf("number");
    expect(document.assumptions).toEqual([
      expect.objectContaining({ path: "#/confidence", value: 0.95, unit: "share", source: { sourceId: "jcgm-106" } }),
    ]);
  });

  it("lists no default that was given, and points into lists", () => {
    const given = { upperLimit: 80, standardUncertainty: 6, confidence: 0.95 };
    expect(runMethod("guard-band", given).assumptions).toEqual([]);
    const savings = [{ annualAtBaseDateUsd: 1, escalationRate: 0.01 }, { annualAtBaseDateUsd: 1 }];
    const input = { costUsd: 1, years: 5, discountRate: 0.03, savings };
    expect(runMethod("life-cycle-cost", input).assumptions.map(({ path, value }) => [path, value])).toEqual([
      ["#/savings/1/escalationRate", 0],
      ["#/reinvestmentRate", 0.03],
    ]);
  });

  it("refuses a method that nobody knows and names the one that was meant", () => {
    const { code, errors } = problemOf(() => runMethod("guard-bnad", {}));
    expect(code).toBe("method-unknown");
    expect(errors[0]!.fix).toContain('"guard-band"');
    expect(problemOf(() => runMethod("zzzzzz", {})).errors[0]!.fix).toContain("calc --list");
  });

  it("tells a wrong form from values that the physics refuses", () => {
    expect(problemOf(() => runMethod("guard-band", { upperLimit: "80", standardUncertainty: 6 })).code).toBe(
      "input-unusable",
    );
    expect(problemOf(() => runMethod("guard-band", { upperLimit: 80 })).code).toBe("outside-range");
    for (const nothing of [undefined, null, 7, "x", []]) {
      expect(problemOf(() => runMethod("guard-band", nothing)).errors[0]!.pointer).toBe("#");
    }
  });

  it("never lets a number that is not finite out", () => {
    const broken = defineMethod({
      id: "planted",
      title: "Planted",
      group: "air",
      summary: "Divides by what it is given.",
      equation: "1/x",
      validRange: "any",
      leftOut: "the guard",
      sources: [{ sourceId: "derived" }],
      input: z.strictObject({ valueRatio: numberField({ unit: "ratio", title: "Value" }) }),
      output: z.strictObject({
        rows: z.array(z.strictObject({ inverseRatio: numberField({ unit: "ratio", title: "Inverse" }) })),
      }),
      defaults: {},
      compute: ({ valueRatio }) => ({ rows: [{ inverseRatio: 1 / valueRatio }] }),
      checks: [],
    });
    expect(runCard(broken, { valueRatio: 4 }).output).toEqual({ rows: [{ inverseRatio: 0.25 }] });
    const { errors } = problemOf(() => runCard(broken, { valueRatio: 0 }));
    expect(errors[0]).toMatchObject({
      code: "result-not-finite",
      detail: expect.stringContaining("rows.0.inverseRatio"),
    });
  });
});
