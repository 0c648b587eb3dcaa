import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { inputProblemFromZod } from "#lib/errors/from-zod.ts";
import { pointerOf } from "#lib/errors/json-pointer.ts";
import { nearestName } from "#lib/errors/nearest-name.ts";
import { numberField } from "#lib/units/field.ts";

const schema = z.strictObject({
  flowCfm: numberField({ unit: "cfm", title: "Fan flow", min: 10, max: 7000 }),
  returnsCount: numberField({ unit: "count", title: "Returns", min: 1, isInteger: true }).optional(),
  points: z
    .array(z.strictObject({ pressurePa: numberField({ unit: "Pa", title: "Pressure", above: 0 }) }))
    .min(1)
    .max(2),
  model: z.enum(["heating", "cooling"]),
  day: z.string().regex(/^\d+$/, "Enter the day as digits").optional(),
  test: z
    .discriminatedUnion("kind", [
      z.strictObject({ kind: z.literal("total"), areaFt2: numberField({ unit: "ft²", title: "Area", above: 0 }) }),
      z.strictObject({ kind: z.literal("none") }),
    ])
    .optional(),
});
const good = { flowCfm: 100, points: [{ pressurePa: 25 }], model: "heating" };

function errorsOf(input: unknown) {
  const parsed = schema.safeParse(input);
  if (parsed.success) throw new Error("accepted");
  return inputProblemFromZod({ error: parsed.error, schema, input }).errors;
}

describe("what zod found, in words", () => {
  it.each([
    [{ ...good, flowCfm: undefined }, "#/flowCfm", "missing", "Fan flow (flowCfm) is missing", "from 10 to 7,000 cfm"],
    [{ ...good, flowCfm: 3 }, "#/flowCfm", "too-small", "not 3", "from 10 to 7,000 cfm"],
    [{ ...good, flowCfm: 9e9 }, "#/flowCfm", "too-big", "not 9000000000", "from 10 to 7,000 cfm"],
    [{ ...good, flowCfm: "12" }, "#/flowCfm", "wrong-type", 'not "12"', "Remove the quotes: 12."],
    [{ ...good, flowCfm: Number.NaN }, "#/flowCfm", "not-finite", "not NaN", "number"],
    [{ ...good, flowCfm: Number.POSITIVE_INFINITY }, "#/flowCfm", "not-finite", "not Infinity", "number"],
    [{ ...good, flowCfm: null }, "#/flowCfm", "wrong-type", "not null", "number"],
    [{ ...good, returnsCount: 1.5 }, "#/returnsCount", "wrong-type", "a whole number, not 1.5", "whole number"],
    [{ ...good, points: [{ pressurePa: 0 }] }, "#/points/0/pressurePa", "too-small", "above 0 Pa, not 0", "above 0 Pa"],
    [{ ...good, points: [] }, "#/points", "too-small", "at least 1 entry, not 0", "Add"],
    [{ ...good, points: [1, 2, 3] }, "#/points", "too-big", "at most 2 entries, not 3", "Remove"],
    [{ ...good, points: [7] }, "#/points/0", "wrong-type", "points[0] must be an object, not 7", "object"],
    [{ ...good, model: "warming" }, "#/model", "not-one-of", '"heating", "cooling", not "warming"', "heating"],
    [{ ...good, model: undefined }, "#/model", "missing", "model is missing", 'one of "heating", "cooling"'],
    [{ ...good, day: "x" }, "#/day", "wrong-form", 'day "x"', "Enter the day as digits."],
    [
      { ...good, flowCfm: undefined, fanFlowCfm: 3 },
      "#/fanFlowCfm",
      "unknown-field",
      'did you mean "flowCfm"',
      'Rename it to "flowCfm"',
    ],
    [{ ...good, retrunsCount: 3 }, "#/retrunsCount", "unknown-field", 'did you mean "returnsCount"', "Rename it to"],
    [{ ...good, fanFlowCfm: 3 }, "#/fanFlowCfm", "unknown-field", "is not a known field", "Known here: flowCfm"],
    [{ ...good, zzz: 3 }, "#/zzz", "unknown-field", '"zzz" is not a known field', "Known here: flowCfm"],
    [{ ...good, "a/b~c": 3 }, "#/a~1b~0c", "unknown-field", "a/b~c", "Remove"],
    [{ ...good, test: { kind: "some" } }, "#/test/kind", "not-one-of", '"total", "none", not "some"', "total"],
    [{ ...good, test: { kind: "total" } }, "#/test/areaFt2", "missing", "Area (areaFt2) is missing", "above 0 ft²"],
    [[], "#", "wrong-type", "The input must be an object", "object"],
    [null, "#", "wrong-type", "The input must be an object", "object"],
  ])("%j → %s %s", (input, pointer, code, detail, fix) => {
    const found = errorsOf(input).find((each) => each.pointer === pointer && each.code === code);
    expect(found, JSON.stringify(errorsOf(input))).toBeDefined();
    expect(found!.detail).toContain(detail);
    expect(found!.fix).toContain(fix);
  });

  it("tells one problem a place, and at most fifty of a long list", () => {
    const long = z.strictObject({ temperaturesF: z.array(z.number()) });
    const input = { temperaturesF: Array.from({ length: 8760 }, () => "x") };
    const problem = inputProblemFromZod({ error: long.safeParse(input).error!, schema: long, input });
    expect(problem.errors).toHaveLength(50);
    expect(problem.message).toContain("and 8710 more");
    expect(errorsOf({ ...good, returnsCount: 0.5 })).toHaveLength(1);
  });

  it("always has a pointer, a detail, a code and a fix, whatever comes in", () => {
    fc.assert(
      fc.property(fc.oneof(fc.jsonValue(), fc.record({ flowCfm: fc.jsonValue(), points: fc.jsonValue() })), (input) => {
        fc.pre(!schema.safeParse(input).success);
        for (const each of errorsOf(input)) {
          expect(each.pointer.startsWith("#")).toBe(true);
          expect(Math.min(each.detail.length, each.code.length, each.fix.length)).toBeGreaterThan(3);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe("pointerOf", () => {
  it("escapes as RFC 6901 section 3 asks", () => {
    expect(pointerOf(["points", 0, "flowCfm"])).toBe("#/points/0/flowCfm");
    expect(pointerOf(["a/b", "m~n"])).toBe("#/a~1b/m~0n");
    expect(pointerOf([])).toBe("#");
  });
});

describe("nearestName", () => {
  const known = ["flowCfm", "ductPressurePa", "exponent"];
  it.each([
    ["flowCFM", "flowCfm"],
    ["floCfm", "flowCfm"],
    ["ductPresurePa", "ductPressurePa"],
    ["fanFlowCfm", "flowCfm"],
    ["expnent", "exponent"],
  ])("takes %s for %s", (given, meant) => expect(nearestName(given, known)).toBe(meant));
  it("does not guess where nothing is near", () => {
    expect(nearestName("colour", known)).toBeUndefined();
    expect(nearestName("", known)).toBeUndefined();
  });
});
