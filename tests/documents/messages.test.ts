import { describe, expect, test } from "vitest";
import { EN } from "#lib/documents/messages/en.ts";
import { ES } from "#lib/documents/messages/es.ts";
import { leakKindName, repairName } from "#lib/documents/messages/names.ts";
import { DRIVER_GROUPS } from "#lib/estimate/parameter-space.ts";
import { LEAK_KIND_IDS } from "#lib/job/leak-kinds.ts";
import { cautionsFor } from "#lib/scope/cautions.ts";
import { STARTING_CATALOGUE } from "#lib/scope/repairs.ts";
import { aimedScope } from "#lib/scope/scope-options.ts";
import type { ChosenScope } from "#lib/scope/scope-problem.ts";

const argumentsOf = (message: string): string[] =>
  [...new Set([...message.matchAll(/\{(\w+)(?:,|\})/g)].map(([, name]) => name!))].sort();

describe("both languages are complete", () => {
  test("the same keys", () => {
    expect(Object.keys(ES).sort()).toEqual(Object.keys(EN).sort());
  });

  test("each message takes the same values in both, and none is empty", () => {
    const keys = Object.keys(EN) as (keyof typeof EN)[];
    expect(keys.length).toBeGreaterThan(250);
    expect(keys.filter((key) => argumentsOf(ES[key]).join() !== argumentsOf(EN[key]).join())).toEqual([]);
    expect(keys.filter((key) => ES[key].trim() === "" || EN[key].trim() === "")).toEqual([]);
  });

  test("every caution that can hold has plain words", () => {
    const places = ["attic", "garage", "vented-crawlspace", "conditioned"] as const;
    const cautions = cautionsFor({
      spraysFromInside: true,
      sites: places.map((placeKind, index) => ({
        id: `s${index}`,
        kind: index === 0 ? "crossover" : "seam",
        side: "return",
        placeKind,
        isSuspectedAsbestos: true,
      })),
    });
    expect(cautions.length).toBeGreaterThan(12);
    for (const { id } of cautions) {
      for (const part of ["title", "text"]) expect(Object.keys(EN)).toContain(`caution.${id}.${part}`);
    }
  });

  test("an option has one name, for the contractor and on the homeowner's paper", () => {
    for (const id of ["essential", "target", "everything", "closest", "limited", "chosen"] as const)
      expect(aimedScope(id, {} as ChosenScope).title).toBe(EN[`option.${id}`]);
  });

  test("every driver has a name and a next move", () => {
    for (const id of Object.keys(DRIVER_GROUPS)) {
      expect(Object.keys(EN)).toContain(`driver.${id}`);
      expect(Object.keys(EN)).toContain(`next.${id}`);
    }
  });

  test("every repair and kind of leak has a Spanish name of its own", () => {
    for (const { id, plainTitle } of STARTING_CATALOGUE.repairs) {
      expect(repairName("es", id, "missing")).not.toBe("missing");
      expect(repairName("es", id, "missing")).not.toBe(plainTitle);
    }
    for (const kind of LEAK_KIND_IDS) expect(leakKindName("es", kind)).not.toBe(leakKindName("en", kind));
  });
});
