import { afterEach, describe, expect, it, vi } from "vitest";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { toProblem } from "#lib/errors/problem-details.ts";

afterEach(() => {
  vi.resetModules();
});

describe("a problem thrown by another copy of the module, as a web server has them", () => {
  it("is known by its mark and answered with its own code, not as unexpected", async () => {
    vi.resetModules();
    const other = await import("#lib/errors/input-problem.ts");
    expect(other.InputProblem).not.toBe(InputProblem);
    const thrown: unknown = new other.InputProblem("repeat-differs", [], "The key belongs to another request.");
    expect(thrown instanceof InputProblem).toBe(true);
    expect(toProblem(thrown)).toMatchObject({ code: "repeat-differs", problem: { status: 422 } });
  });

  it("is no other error, and a kind of its own is still told from the rest", () => {
    class Own extends InputProblem {}
    const plain = new InputProblem("conflict", []);
    expect([new Error("x"), null, "x", {}].some((each) => each instanceof InputProblem)).toBe(false);
    expect(new Own("conflict", []) instanceof Own).toBe(true);
    expect(new Own("conflict", []) instanceof InputProblem).toBe(true);
    expect(plain instanceof Own).toBe(false);
    expect(plain instanceof Error).toBe(true);
  });
});
