import { describe, expect, test } from "vitest";
import { z } from "zod";
import { cautionWords } from "#lib/documents/crew/caution-words.ts";
import { crewSheetView } from "#lib/documents/crew-sheet-view.ts";
import type { DocumentView } from "#lib/documents/document-view.ts";
import { proposalView } from "#lib/documents/proposal-view.ts";
import { createSpeaker } from "#lib/documents/speaker.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { jobSchema } from "#lib/job/job-schema.ts";
import { priceBookSchema } from "#lib/job/price-book-schema.ts";
import { repairCatalogueSchema } from "#lib/scope/repair-schema.ts";
import { exampleWithReference } from "#tests/estimate/example-jobs.ts";
import { estimatedExample } from "./estimated-examples.ts";
import { sectionText } from "./view-text.ts";

/** What a switch for a caution would be called. */
const SWITCH = /caution|hazard|silen|suppress|mute|hidden|hide|omit|skip|disable|acknowledg/i;

function keysOf(schema: unknown): string[] {
  if (Array.isArray(schema)) return schema.flatMap(keysOf);
  if (typeof schema !== "object" || schema === null) return [];
  return Object.entries(schema).flatMap(([key, value]) => [
    ...(key === "properties" && typeof value === "object" && value !== null ? Object.keys(value) : []),
    ...keysOf(value),
  ]);
}

describe("cautions cannot be switched off", () => {
  test("nothing that a firm fills in has a field that could", () => {
    for (const schema of [jobSchema, priceBookSchema, repairCatalogueSchema]) {
      const keys = keysOf(z.toJSONSchema(schema));
      expect(keys.length).toBeGreaterThan(20);
      expect(keys.filter((key) => SWITCH.test(key))).toEqual([]);
    }
    expect(["skipCautions", "hideWarnings"].every((key) => SWITCH.test(key))).toBe(true);
    expect(jobSchema.safeParse({ cautions: [] }).success).toBe(false);
  });

  test("the firm's own prices, choice of work, goal or no work at all take none away", async () => {
    const { job, reference } = await exampleWithReference("cold-attic-furnace.json");
    const idsOf = async (plan: object) =>
      (await estimate({ ...job, plan: { ...job.plan, ...plan } }, reference)).cautions.map(({ id }) => id);
    const all = await idsOf({});
    const [first] = job.sites;
    for (const plan of [
      { objective: "lifetime-value" },
      { chosenMeasures: [] },
      { chosenMeasures: [{ siteId: first!.id, repairId: "mastic-with-mesh" }] },
    ])
      expect((await idsOf(plan)).filter((id) => all.includes(id))).toEqual(all.filter((id) => id !== "spraying"));
  });

  test.each(["en", "es"] as const)("each stands on the homeowner's and on the crew's paper (%s)", async (language) => {
    const { job, result } = await estimatedExample("cold-attic-furnace.json");
    const input = { job, result, language, isoDate: "2026-11-25" };
    const speaker = createSpeaker(language);
    expect(result.cautions.length).toBeGreaterThan(8);
    const textOf = ({ notices, sections }: DocumentView) =>
      [...notices.map(({ title, text }) => `${title} ${text}`), ...sections.flatMap(sectionText)].join("\n");
    const [paper, sheet] = [textOf(proposalView(input)), textOf(crewSheetView(input))];
    for (const caution of result.cautions) {
      for (const part of ["title", "text"])
        expect(paper, caution.id).toContain(speaker.sayIfKnown(`caution.${caution.id}.${part}`));
      const { title, text } = cautionWords({ speaker, language }, caution);
      expect(sheet, caution.id).toContain(title);
      expect(sheet, caution.id).toContain(text);
    }
  });
});
