import { describe, expect, it } from "vitest";
import { fitChangePoint } from "#lib/loads/change-point-fit.ts";
import type { ChangePointModel } from "#lib/loads/change-point-model.ts";
import { expectClose } from "#tests/expect-close.ts";
import cases from "#tests/reference/ashrae-guideline-14/cases.json" with { type: "json" };

describe("a change-point fit of noisy bills [ashrae-guideline-14, an independent program]", () => {
  it.each(cases.map((each) => [each.title, each] as const))("%s", (_, { periods, model, expected }) => {
    const fit = fitChangePoint({ periods, model: model as ChangePointModel });
    const names = Object.keys(expected) as (keyof typeof expected)[];
    expect(names.length).toBeGreaterThanOrEqual(5);
    for (const name of names) {
      expectClose({
        actual: fit[name] as number,
        expected: expected[name]!,
        relativeTolerance: 1e-5,
        reason: "two searches for the same least squares",
      });
    }
  });
});
