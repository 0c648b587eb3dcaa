import { describe, expect, it } from "vitest";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { METHODS } from "#lib/methods/catalogue.ts";
import type { MethodCard } from "#lib/methods/method-card.ts";
import { methodResultDocument, runCard } from "#lib/methods/run-method.ts";
import { SOURCES } from "#lib/sources/sources.ts";
import { expectClose } from "#tests/expect-close.ts";

/** The ids of the contract, in its order. */
const CONTRACT_IDS = [
  "air-density",
  "moist-air",
  "temperature-rise-airflow",
  "matched-pressure-airflow",
  "fan-flow",
  "leakage-at-pressure",
  "power-law-fit",
  "orifice-area",
  "to-outside-share",
  "blower-door-subtraction",
  "delta-q-model",
  "delta-q-fit",
  "leakage-reconciliation",
  "operating-leakage",
  "airflow-after-sealing",
  "delivery-effectiveness-heating",
  "delivery-effectiveness-cooling",
  "thermal-regain",
  "thermal-regain-cooling",
  "load-factor",
  "load-factor-cooling",
  "unbalanced-infiltration",
  "house-pressure",
  "distribution-efficiency",
  "zone-temperature",
  "attic-temperature",
  "low-stage-losses",
  "equipment-airflow",
  "cooling-performance",
  "heat-pump-performance",
  "heat-pump-bin",
  "seasonal-efficiency",
  "degree-days-from-monthly-means",
  "degree-days-from-hourly",
  "change-point-fit",
  "seasons-from-bills",
  "building-ua",
  "natural-infiltration",
  "deemed-leakage-savings",
  "deemed-efficiency-savings",
  "energy-charge",
  "life-cycle-cost",
  "conformance-probability",
  "guard-band",
  "monte-carlo-range",
  "before-after-difference",
];

function at(value: unknown, path: string): unknown {
  return path.split(".").reduce((node, key) => (node as Record<string, unknown> | undefined)?.[key], value);
}

/** Fills each default of the card that the input leaves out, so that the stated default can be held to the code's. */
function withDefaultsSpelledOut(card: MethodCard, input: Record<string, unknown>): Record<string, unknown> {
  const filled = structuredClone(input);
  for (const used of runCard(card, input).assumptions) {
    const keys = used.path.replace("#/", "").split("/");
    const last = keys.pop()!;
    (keys.length === 0 ? filled : (at(filled, keys.join(".")) as Record<string, unknown>))[last] = used.value;
  }
  return filled;
}

function problemsOf(card: MethodCard, input: unknown): InputProblem {
  try {
    runCard(card, input);
  } catch (thrown) {
    if (thrown instanceof InputProblem) return thrown;
    throw thrown;
  }
  throw new Error(`${card.id} accepted ${JSON.stringify(input)}`);
}

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

describe("the catalogue", () => {
  it("holds every method of the contract, in its order", () => {
    expect(METHODS.map((card) => card.id)).toEqual(CONTRACT_IDS);
  });

  it("names only sources of the list, and at least one a card", () => {
    const known = new Set(SOURCES.map((source) => source.id));
    for (const card of METHODS) {
      const cited = [
        ...card.sources,
        ...card.checks.map((check) => check.source),
        ...Object.values(card.defaults).map((each) => each.source),
      ];
      expect(card.sources.length, card.id).toBeGreaterThan(0);
      for (const { sourceId } of cited) expect(known.has(sourceId), `${card.id} cites ${sourceId}`).toBe(true);
    }
  });
});

describe.each(METHODS.map((card) => [card.id, card] as const))("%s", (_, card) => {
  it.each(card.checks.map((check) => [`${check.name} [${check.source.sourceId}]`, check] as const))(
    "gives %s",
    (_name, check) => {
      const { output } = runCard(card, check.input);
      expect(Object.keys(check.expected).length).toBeGreaterThan(0);
      for (const [path, expected] of Object.entries(check.expected)) {
        const actual = at(output, path);
        expect(actual, `${path} is no number`).toBeTypeOf("number");
        expectClose({
          actual: actual as number,
          expected,
          relativeTolerance: check.relativeTolerance,
          reason: check.toleranceReason,
          ...(check.scale === undefined ? {} : { scale: check.scale }),
        });
      }
    },
  );

  it("has a check, and texts that say what it does", () => {
    expect(card.checks.length).toBeGreaterThan(0);
    for (const text of [card.title, card.summary, card.equation, card.validRange, card.leftOut]) {
      expect(text.length).toBeGreaterThan(3);
    }
  });

  it("returns what its output schema promises, all numbers finite, the same each time", () => {
    for (const check of card.checks) {
      const { output } = runCard(card, check.input);
      expect(card.output.safeParse(output).error?.issues ?? []).toEqual([]);
      const numbers = numbersIn(output);
      expect(numbers.length).toBeGreaterThan(0);
      expect(numbers.filter((each) => !Number.isFinite(each))).toEqual([]);
      expect(runCard(card, check.input).output).toEqual(output);
      expect(JSON.parse(JSON.stringify(methodResultDocument(runCard(card, check.input)))).assumptions).toBeInstanceOf(
        Array,
      );
      expect(Object.keys(output)).not.toContain("assumptions");
    }
  });

  it("lists each default it used, and computes with that very value", () => {
    for (const check of card.checks) {
      const spelledOut = withDefaultsSpelledOut(card, check.input);
      expect(runCard(card, spelledOut).assumptions).toEqual([]);
      expect(runCard(card, spelledOut).output).toEqual(runCard(card, check.input).output);
    }
    for (const name of Object.keys(card.defaults).filter((each) => !each.includes("."))) {
      expect(card.input.shape[name]?.safeParse(undefined).success, `${name} may be left out`).toBe(true);
    }
  });

  it("refuses an unknown field and names it", () => {
    const { code, errors } = problemsOf(card, { ...card.checks[0]!.input, notAField: 1 });
    expect(code).toBe("input-unusable");
    expect(errors.map((each) => [each.pointer, each.code])).toContainEqual(["#/notAField", "unknown-field"]);
  });

  it("refuses an input without a required field, naming it and what to do", () => {
    const required = Object.entries(card.input.shape).filter(([, field]) => !field.safeParse(undefined).success);
    for (const [name] of required) {
      const { [name]: _left, ...rest } = card.checks[0]!.input;
      const { errors } = problemsOf(card, rest);
      expect(errors.map((each) => [each.pointer, each.code])).toContainEqual([`#/${name}`, "missing"]);
      expect(errors.every((each) => each.fix.length > 5)).toBe(true);
    }
  });

  it("refuses NaN, infinity and text in each of its numbers", () => {
    for (const [name, given] of Object.entries(card.checks[0]!.input)) {
      if (typeof given !== "number") continue;
      for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, "12"]) {
        const { errors } = problemsOf(card, { ...card.checks[0]!.input, [name]: bad });
        expect(errors.map((each) => each.pointer)).toContain(`#/${name}`);
      }
    }
  });
});
