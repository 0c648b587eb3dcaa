import { expect, test } from "vitest";
import { openPromises } from "#app/jobs/[id]/proposal/open-promises.tsx";

test("a firm is told what its papers would leave open, until it has said it", () => {
  expect(openPromises({ name: "Invented Sealing" })).toHaveLength(3);
  expect(
    openPromises({
      name: "Invented Sealing",
      license: "IN-1",
      paymentTerms: "Half at the start",
      missedGoal: { rule: "work-on" },
    }),
  ).toEqual([]);
  expect(openPromises({ name: "Invented Sealing", license: "IN-1", paymentTerms: "Half at the start" })[0]).toContain(
    "misses the goal",
  );
});
