import { readdirSync, readFileSync } from "node:fs";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { certificateView } from "#lib/documents/certificate-view.ts";
import { crewSheetView } from "#lib/documents/crew-sheet-view.ts";
import { pictureScene } from "#lib/documents/document-picture.ts";
import { type Block, type DocumentView, openBlocks } from "#lib/documents/document-view.ts";
import { DocumentHtml } from "#lib/documents/html/document-html.tsx";
import { sayOfEngine } from "#lib/documents/messages/engine-words.ts";
import { assumptionName } from "#lib/documents/messages/names.ts";
import { proposalView } from "#lib/documents/proposal-view.ts";
import { renderProposalPdf } from "#lib/documents/render-proposal-pdf.ts";
import { retestSheetView } from "#lib/documents/retest-sheet-view.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { METHODS } from "#lib/methods/catalogue.ts";
import { TARGET_RULES } from "#lib/retest/targets.ts";
import { DEMO_PRICE_BOOK } from "#lib/scope/demo-price-book.ts";
import { NEVERS, PREREQUISITES } from "#lib/scope/repair-rules.ts";
import { STARTING_CATALOGUE } from "#lib/scope/repairs.ts";
import { SOURCES } from "#lib/sources/sources.ts";
import { EXAMPLE_FILES, exampleWithReference } from "#tests/estimate/example-jobs.ts";
import { estimatedExample } from "./estimated-examples.ts";
import { pdfTextInOrder } from "./pdf-lines.ts";
import { blockText, ENGLISH } from "./view-text.ts";

/** What the firm or the job wrote stands as it was written, in whatever language. */
function ownWords(job: Job): string[] {
  return [
    job.house.label,
    ...job.sites.flatMap(({ label, id }) => [label, id]),
    ...job.places.map(({ label }) => label),
    ...job.systems.flatMap(({ label, runs }) => [label, ...runs.flatMap((run) => [run.label, run.id])]),
    ...job.tests.map(({ id }) => id),
    ...(job.instruments?.fans ?? []).flatMap(({ name, calibrations }) => [
      name,
      ...calibrations.flatMap(({ restrictorLabel, restrictorId }) => [restrictorLabel, restrictorId]),
    ]),
    ...(job.instruments?.gauges ?? []).map(({ name }) => name),
    ...(job.priceBook ?? DEMO_PRICE_BOOK).rebates.flatMap(({ title, conditionText }) => [title, conditionText]),
  ].filter((words) => words !== undefined && words !== "") as string[];
}

function pictureText(block: Block): string[] {
  if (block.kind !== "picture") return [];
  const { title, finding, note, table } = pictureScene(block.picture, { width: 680, language: "es" });
  return [title, finding, note ?? "", table.caption, ...table.columns.map(({ label }) => label), ...table.rows.flat()];
}

/** Every sentence of a paper that is not marked as English. */
function spanishText(view: DocumentView): string[] {
  const blocks = view.sections.filter(({ id }) => id !== "sources").flatMap((section) => openBlocks(section.blocks));
  return [
    view.title,
    view.heading,
    view.footer,
    ...view.facts,
    ...view.lead,
    ...Object.values(view.words),
    ...view.notices.flatMap(({ title, text }) => [title, text]),
    ...view.sections.map(({ title }) => title),
    ...view.sections.flatMap(({ blocks: all }) => all.flatMap((block) => (block.kind === "more" ? [block.label] : []))),
    ...blocks.flatMap((block) => ("language" in block && block.language === "en" ? [] : blockText(block))),
    ...blocks.flatMap(pictureText),
  ];
}

function englishLeft(view: DocumentView, job: Job): string[] {
  const own = ownWords(job).sort((one, other) => other.length - one.length);
  return spanishText(view).filter((text) =>
    ENGLISH.test(own.reduce((rest, words) => rest.replaceAll(words, "…"), text)),
  );
}

describe("no English is left on a Spanish paper", () => {
  test("the check finds English where it is", async () => {
    const { job, result } = await estimatedExample("cold-attic-furnace.json");
    const english = proposalView({ job, result, language: "en", isoDate: "2026-11-25" });
    expect(englishLeft(english, job).length).toBeGreaterThan(100);
  });

  test.each(EXAMPLE_FILES)("%s: proposal, crew sheet, retest sheet, certificate", async (file) => {
    const { job, result } = await estimatedExample(file);
    const input = { job, result, language: "es" as const, isoDate: "2026-11-25" };
    const views = [
      proposalView(input),
      crewSheetView(input),
      retestSheetView(input),
      ...(result.verified ? [certificateView(input)] : []),
    ];
    for (const view of views) expect(englishLeft(view, job), view.kind).toEqual([]);
  });

  test("nor on its page and in its PDF as they are handed out", async () => {
    const { job, result } = await estimatedExample("cold-attic-furnace.json");
    const input = { job, result, language: "es" as const, isoDate: "2026-11-25" };
    const page = renderToStaticMarkup(
      DocumentHtml({ view: proposalView(input), frame: { fingerprint: "0".repeat(64), links: [], skipLabel: "—" } }),
    )
      .replace(/<style>.*?<\/style>/s, "")
      .replace(/<[^>]+>/g, " ");
    const paper = pdfTextInOrder(await renderProposalPdf(input));
    const own = ownWords(job).sort((one, other) => other.length - one.length);
    for (const [name, text] of Object.entries({ page, paper })) {
      // Titles of sources stay as they were published; nothing but the fingerprint and the page number follows them.
      // A fingerprint spells what chance wants.
      const words = text.replaceAll(/\b[0-9a-f]{24,}\b/g, "…").replaceAll(/\s+/g, " ");
      const said = words.slice(0, words.lastIndexOf("Fuentes"));
      expect(said.length, name).toBeGreaterThan(10_000);
      const rest = own.reduce((left, owned) => left.replaceAll(owned, "…"), said);
      const around = [...rest.matchAll(new RegExp(ENGLISH, "giu"))].map(({ index }) =>
        rest.slice(index - 40, index + 40),
      );
      expect(around, name).toEqual([]);
    }
  });

  const markedEnglish = (view: DocumentView) =>
    view.sections
      .flatMap(({ blocks }) => openBlocks(blocks).filter((block) => "language" in block && block.language === "en"))
      .flatMap(blockText);

  test.each(EXAMPLE_FILES)("%s: nor is anything set apart as English", async (file) => {
    const { job, result } = await estimatedExample(file);
    expect(markedEnglish(proposalView({ job, result, language: "es", isoDate: "2026-11-25" }))).toEqual([]);
  });

  test("a sentence of another engine is set apart and marked, so that it is read out and hyphenated as English", async () => {
    const { job, result } = await estimatedExample("cold-attic-furnace.json");
    const older = { ...result, warnings: [{ ...result.warnings[0]!, what: "The weather was told by an older rule." }] };
    const marked = markedEnglish(proposalView({ job, result: older, language: "es", isoDate: "2026-11-25" }));
    expect(marked).toHaveLength(1);
    expect(marked[0]).toContain("The weather was told by an older rule.");
  });
});

describe("the engine's own sentences", () => {
  const isSaid = (text: string) => sayOfEngine("es", text) !== undefined;

  test("each reason of an assumption that stands in the source has a Spanish one", () => {
    const folder = new URL("../../lib/estimate/", import.meta.url);
    const inFolder = readdirSync(new URL("complete/", folder)).map((name) => `complete/${name}`);
    const sources = [...inFolder, "plan-problem.ts", "find-target.ts"].map((name) =>
      readFileSync(new URL(name, folder), "utf8"),
    );
    const reasons = sources.flatMap((source) => [
      ...[...source.matchAll(/reason:\s+"([^"]+)"/g)].map(([, text]) => text!),
      ...[...source.matchAll(/reason:[^"`;]{0,60}\?\s+"([^"]+)"\s+: "([^"]+)"/g)].flatMap(([, one, other]) => [
        one!,
        other!,
      ]),
    ]);
    expect(reasons.length).toBeGreaterThan(30);
    expect(reasons.filter((text) => !isSaid(text))).toEqual([]);
  });

  test("each assumption of jobs that tell as little as they may has a Spanish name, value and reason", async () => {
    const missing = new Set<string>();
    let seen = 0;
    for (const file of EXAMPLE_FILES) {
      const { job, reference } = await exampleWithReference(file);
      for (const bare of bareJobs(job)) {
        for (const { path, title, value, reason } of (await estimate(bare, reference)).assumptions) {
          seen += 1;
          if (assumptionName("es", path, title) === title) missing.add(`name of ${path}`);
          if (typeof value === "string" && !isSaid(value)) missing.add(`value ${value}`);
          if (!isSaid(reason)) missing.add(reason);
        }
      }
    }
    expect(seen).toBeGreaterThan(200);
    expect([...missing]).toEqual([]);
  });

  test("steps of repairs, materials with their units, rules, methods and our own sources", () => {
    const texts = [
      ...STARTING_CATALOGUE.repairs.flatMap(({ steps }) => steps),
      ...DEMO_PRICE_BOOK.materials.flatMap(({ title, unit }) => [title, unit]),
      ...[...Object.values(PREREQUISITES), ...Object.values(NEVERS)].map(({ text }) => text),
      ...TARGET_RULES.map(({ title }) => title),
      ...SOURCES.filter(({ author }) => author === "this project").map(({ title }) => title),
      ...METHODS.filter(({ id }) => TRACED.includes(id)).map(({ title }) => title),
    ];
    expect(texts.filter((text) => !isSaid(text))).toEqual([]);
    expect(METHODS.filter(({ id }) => TRACED.includes(id))).toHaveLength(TRACED.length);
  });
});

const TRACED: readonly string[] = [
  "air-density",
  "power-law-fit",
  "leakage-at-pressure",
  "leakage-reconciliation",
  "operating-leakage",
  "airflow-after-sealing",
  "delivery-effectiveness-heating",
  "delivery-effectiveness-cooling",
  "change-point-fit",
  "heat-pump-bin",
  "seasonal-efficiency",
];

/** The same job with one part after another told as little as it may be. */
function bareJobs(job: Job): Job[] {
  const { rates: _r, plan: _p, priceBook: _b, ...rest } = job;
  const { elevationFt: _e, builtYear: _y, storeysCount: _s, bedroomsCount: _bed, ...house } = job.house;
  const systems = job.systems.map(({ blower: _blower, servedFloorShare: _share, heating, cooling, ...system }) => ({
    ...system,
    ...(heating ? { heating: { kind: heating.kind, outputBtuPerH: heating.outputBtuPerH } } : {}),
    ...(cooling ? { cooling: { capacityBtuPerH: cooling.capacityBtuPerH } } : {}),
    runs: system.runs.map(({ id, side, placeId }) => ({ id, side, placeId })),
  }));
  const places = job.places.map(({ id, kind }) => ({ id, kind }));
  const sites = job.sites.map(({ id, kind, side, systemId, placeId }) => ({ id, kind, side, systemId, placeId }));
  return [
    job,
    { ...rest, house } as Job,
    { ...job, systems } as Job,
    { ...job, places, sites } as Job,
    { ...rest, house, places, sites, plan: { targetCfm25: 80 } } as Job,
  ];
}
