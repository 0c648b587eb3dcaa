import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { METHODS } from "#lib/methods/catalogue.ts";
import { runCard } from "#lib/methods/run-method.ts";
import { anyInputOf } from "./any-input.ts";

/** The same inputs each time, so that a red test is a change and never luck. */
const SEED = 20261125;

/** Methods that draw hundreds of times themselves are asked less often. */
const RUNS_OF: Readonly<Record<string, number>> = { "leakage-reconciliation": 15, "delta-q-fit": 15 };
const runsOf = (id: string, usual: number) => Math.min(usual, RUNS_OF[id] ?? usual);

/** Runs a card; an InputProblem is an answer too. Anything else that is thrown is a fault of the method. */
function answerOf(card: (typeof METHODS)[number], input: unknown): "output" | InputProblem {
  try {
    const { output } = runCard(card, input);
    const faults = card.output.safeParse(output).error?.issues ?? [];
    expect(faults).toEqual([]);
    return "output";
  } catch (thrown) {
    if (thrown instanceof InputProblem) return thrown;
    throw thrown;
  }
}

describe.each(METHODS.map((card) => [card.id, card] as const))("%s", (_, card) => {
  it("answers whatever its schema allows with finite numbers or with a problem that says what to do", () => {
    fc.assert(
      fc.property(anyInputOf(card.input, 0.01), (input) => {
        const answer = answerOf(card, input);
        if (answer === "output") return;
        for (const { pointer, detail, fix, code } of answer.errors) {
          expect(code).not.toBe("result-not-finite");
          expect([pointer, detail, fix].join("")).not.toMatch(/undefined|NaN/);
        }
      }),
      { numRuns: runsOf(card.id, 300), seed: SEED, endOnFailure: true },
    );
  });

  it("refuses, without a crash, values so small or large that no finite number is left", () => {
    fc.assert(
      fc.property(anyInputOf(card.input, Number.MIN_VALUE), (input) => {
        answerOf(card, input);
      }),
      { numRuns: runsOf(card.id, 200), seed: SEED, endOnFailure: true },
    );
  });

  it("answers any JSON at all with a problem, never with a crash", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (input) => {
        answerOf(card, input);
      }),
      { numRuns: 50, seed: SEED, endOnFailure: true },
    );
  });
});

describe("the generator of inputs", () => {
  it("reaches the methods themselves, not only their guards", () => {
    const isReachedIn = (card: (typeof METHODS)[number], numRuns: number) =>
      fc
        .sample(anyInputOf(card.input, 0.01), { numRuns, seed: SEED })
        .some((input) => answerOf(card, input) === "output");
    const guarded = METHODS.filter((card) => !isReachedIn(card, 300) && !isReachedIn(card, 5000)).map(
      (card) => card.id,
    );
    // A bill has as many daily temperatures as days, which chance never draws.
    expect(guarded).toEqual(["change-point-fit"]);
  });
});
