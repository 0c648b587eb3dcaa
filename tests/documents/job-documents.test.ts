import sharp from "sharp";
import { describe, expect, test } from "vitest";
import { certificateView } from "#lib/documents/certificate-view.ts";
import { crewSheetView } from "#lib/documents/crew-sheet-view.ts";
import { renderDocumentPage } from "#lib/documents/html/render-document-page.ts";
import { proposalView } from "#lib/documents/proposal-view.ts";
import { renderDocumentPdf } from "#lib/documents/render-document-pdf.ts";
import { renderJobDocuments } from "#lib/documents/render-job-documents.ts";
import { retestSheetView } from "#lib/documents/retest-sheet-view.ts";
import { photosOfView, withPhotos } from "#lib/documents/with-photos.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { paperPhoto } from "#lib/exchange/photos/paper-photo.ts";
import { contentHash } from "#lib/hash/content-hash.ts";
import { createHighsSolver } from "#lib/work/highs-solver.ts";
import { exampleWithReference } from "#tests/estimate/example-jobs.ts";
import { estimatedExample, largeExample } from "./estimated-examples.ts";
import { sectionOf, sectionText } from "./view-text.ts";

const DATE = { language: "en", isoDate: "2026-11-25" } as const;

describe("the crew sheet", () => {
  test("names each repair of the chosen option once, by the number in the drawing", async () => {
    const { job, result } = await estimatedExample("hot-humid-two-systems.json");
    const view = crewSheetView({ job, result, ...DATE });
    const chosen = result.scope.options.find(({ id }) => id === result.scope.chosen)!;
    const numbers = view.sections
      .filter(({ id }) => id.startsWith("stage-"))
      .flatMap(({ blocks }) => blocks)
      .flatMap((block) => (block.kind === "table" ? block.table.rows.map(([number]) => number) : []));
    const expected = chosen.measures.map(({ siteId }) => String(job.sites.findIndex(({ id }) => id === siteId) + 1));
    expect([...numbers].sort()).toEqual([...expected].sort());
  });

  test("a caution stands at the spot where it matters", async () => {
    const { job, result } = await estimatedExample("hot-humid-two-systems.json");
    const view = crewSheetView({ job, result, ...DATE });
    const attic = view.sections.find(({ title }) => title.includes("Attic"))!;
    expect(sectionText(attic).join(" ")).toContain("Step on framing only");
    expect(sectionText(sectionOf(view, "before")).join(" ")).not.toContain("Step on framing only");
  });

  test("no caution of the result is left out, and those that stop the work stand on top", async () => {
    const { job, result } = await estimatedExample("cold-attic-furnace.json");
    const view = crewSheetView({ job, result, ...DATE });
    const all = [...view.notices.map(({ title }) => title), ...view.sections.flatMap(sectionText)];
    expect(result.cautions.length).toBeGreaterThan(5);
    expect(result.cautions.filter(({ title }) => !all.includes(title))).toEqual([]);
    // The leak beside the appliance stays as it is in this order; its danger is told there all the same.
    expect(sectionText(sectionOf(view, "leave")).join(" ")).toContain(
      "Return leaks beside an appliance that burns fuel",
    );
    expect(view.notices.map(({ title }) => title)).toContain("Test appliances that burn fuel, before and after");
  });

  test("what is loaded is never less than what is needed, and pieces are whole", async () => {
    const { job, result } = await estimatedExample("hot-humid-two-systems.json");
    const chosen = result.scope.options.find(({ id }) => id === result.scope.chosen)!;
    const [table] = sectionOf(crewSheetView({ job, result, ...DATE }), "load").blocks;
    const rows = table?.kind === "table" ? table.table.rows : [];
    expect(rows).toHaveLength(chosen.materials.length);
    chosen.materials.forEach(({ amount, unit }, index) => {
      const loaded = Number(rows[index]![1]!.replaceAll(",", ""));
      expect(loaded).toBeGreaterThanOrEqual(amount - 1e-9);
      expect(loaded).toBeLessThan(amount + (unit === "each" ? 1 : 0.1));
      if (unit === "each") expect(Number.isInteger(loaded)).toBe(true);
    });
  });

  test("sixty leaks all stand on it", async () => {
    const { job, result } = await largeExample();
    const text = crewSheetView({ job, result, ...DATE })
      .sections.flatMap(sectionText)
      .join("\n");
    for (let number = 1; number <= 60; number += 1) expect(text).toContain(`number ${number}\n`);
  });
});

describe("rules and photos on the crew sheet", () => {
  test("what must be true first and what is never done stand before the first repair, cloth tape among them", async () => {
    const { job, result } = await estimatedExample("cold-attic-furnace.json");
    const view = crewSheetView({ job, result, ...DATE });
    const ids = view.sections.map(({ id }) => id);
    expect(ids.indexOf("rules")).toBeLessThan(ids.indexOf("stage-1"));
    const rules = sectionText(sectionOf(view, "rules")).join(" ");
    expect(rules).toContain("Never cloth duct tape");
    expect(rules).toContain("Never close an opening that lets air in");
    expect(rules).toContain("held by screws");
  });

  test("photos stand with their leak, in the paper by what they show and in its layout as pictures", async () => {
    const { job, result } = await estimatedExample("cold-attic-furnace.json");
    const chosen = result.scope.options.find(({ id }) => id === result.scope.chosen)!;
    expect(photosOfView(crewSheetView({ job, result, ...DATE }))).toEqual([]);
    const photos = [{ sha256: "0".repeat(64), caption: "Open return seen from the hatch", takenOn: "2026-11-05" }];
    const sites = job.sites.map((site) => (site.id === chosen.measures[0]!.siteId ? { ...site, photos } : site));
    const view = crewSheetView({ job: { ...job, sites }, result, ...DATE });
    const text = JSON.stringify(view);
    expect(text).toMatch(/Leak \d+: Open return seen from the hatch, November 5, 2026/);

    // The pictures are put in only to be laid out: page and paper show them, and what the paper says stays the same.
    expect(photosOfView(view)).toEqual(["0".repeat(64)]);
    const picture = await sharp({ create: { width: 600, height: 450, channels: 3, background: "#964" } })
      .jpeg()
      .toBuffer();
    const shown = withPhotos(view, new Map([["0".repeat(64), await paperPhoto(picture)]]));
    expect(contentHash(withPhotos(view, new Map()))).toBe(contentHash(view));
    const frame = { paper: "letter" as const, fingerprint: contentHash(view) };
    const [without, withPicture] = [await renderDocumentPdf(view, frame), await renderDocumentPdf(shown, frame)];
    expect(Buffer.from(withPicture).includes("/DCTDecode")).toBe(true);
    expect(Buffer.from(without).includes("/DCTDecode")).toBe(false);
    const html = await renderDocumentPage(shown, { fingerprint: "", links: [], skipLabel: "" });
    expect(html).toMatch(/<img src="data:image\/jpeg;base64,[^"]+" alt="Leak \d+: Open return seen from the hatch/);
  });
});

describe("the retest sheet", () => {
  test("tells the limit apart from the reading that meets it with confidence (form of JCGM 106)", async () => {
    const { job, result } = await estimatedExample("mixed-crawlspace-retest.json");
    const view = retestSheetView({ job, result, ...DATE });
    const retest = result.retest!;
    expect(retest.acceptanceCfm25).toBeLessThan(retest.limitCfm25);
    expect(view.heading).toContain("162 cfm");
    expect(view.lead[0]).toContain("with 95% confidence");
    const how = sectionText(sectionOf(view, "how")).join(" ");
    for (const { title } of retest.readings) expect(how).toContain(title);
  });

  test("after a miss the next repair is the one with most cfm for its money", async () => {
    const { job, result } = await estimatedExample("cold-attic-furnace.json");
    const essential = result.scope.options.find(({ id }) => id === "essential");
    const chosen = essential ?? result.scope.options[0]!;
    const view = retestSheetView({
      job,
      result: { ...result, scope: { ...result.scope, chosen: chosen.id } },
      ...DATE,
    });
    const table = sectionOf(view, "missed").blocks.find((block) => block.kind === "table");
    const worth = table?.kind === "table" ? table.table.rows.map((row) => Number(row[3])) : [];
    expect(worth.length).toBeGreaterThan(0);
    expect(worth).toEqual([...worth].sort((a, b) => b - a));
  });
});

describe("the certificate", () => {
  test("says what was read, and promise beside result", async () => {
    const { job, result } = await estimatedExample("mixed-crawlspace-retest.json");
    const view = certificateView({ job, result, ...DATE });
    const before = result.leakage.totalCfm25.value;
    const after = before - result.verified!.differenceCfm25.value;
    expect(view.heading).toBe("Your ducts leak 60% less.");
    expect(view.lead[0]).toContain(String(Math.round(before)));
    expect(view.lead[0]).toContain(String(Math.round(after)));
    expect(sectionText(sectionOf(view, "promise")).join(" ")).toContain("left more open than we expected");
    expect(view.notices.map(({ text }) => text).join(" ")).toContain("not a guarantee");
  });

  test("a change within the doubt of the tests is not called one", async () => {
    const { job, result } = await estimatedExample("mixed-crawlspace-retest.json");
    const verified = { ...result.verified!, reductionShare: { value: 0.03, p10: -0.02, p50: 0.03, p90: 0.08 } };
    const view = certificateView({ job, result: { ...result, verified }, ...DATE });
    expect(view.heading).toBe("The two tests can not tell a change.");
  });

  test("tells later bills beside the estimate in both languages, and plainly when they cannot tell", async () => {
    const { job, result } = await estimatedExample("mixed-crawlspace-retest.json");
    const bills = (change: object) => [
      {
        fuel: "electricity" as const,
        unit: "kWh" as const,
        before: null,
        after: null,
        saved: { value: 1203.4, p10: 810.2, p90: 1596.6 },
        fractionalUncertaintyRatio: 0.3,
        isTold: true,
        estimated: { value: 1324, p10: 900, p90: 1800 },
        agreement: "agree" as const,
        explanation: [],
        ...change,
      },
    ];
    const textOf = (language: "en" | "es", change: object) => {
      const input = { job, result: { ...result, laterBills: bills(change) }, ...DATE, language };
      return sectionText(sectionOf(certificateView(input), "bills")).join(" ");
    };
    expect(textOf("en", {})).toContain("1,203 (could be 810 to 1,597)");
    expect(textOf("en", {})).toContain("Electricity (kWh): the bills and our figure agree.");
    expect(textOf("es", { agreement: "bills-show-less" })).toContain("los recibos muestran menos de lo que calculamos");
    for (const change of [{ isTold: false }, { saved: null, isTold: false, agreement: null }])
      expect(textOf("en", change)).toContain("the bills can not tell");
    expect(certificateView({ job, result, ...DATE }).sections.map(({ id }) => id)).not.toContain("bills");
  });

  test("there is none without a retest", async () => {
    const { job, result } = await estimatedExample("cold-attic-furnace.json");
    expect(() => certificateView({ job, result, ...DATE })).toThrow(InputProblem);
  });
});

test("a job gives all the documents that apply, each a PDF file", async () => {
  const kinds = async (file: string) => {
    const documents = await renderJobDocuments({ ...(await estimatedExample(file)), ...DATE });
    for (const { bytes } of documents) expect(Buffer.from(bytes.slice(0, 5)).toString()).toBe("%PDF-");
    return documents.map(({ kind }) => kind);
  };
  expect(await kinds("cold-attic-furnace.json")).toEqual(["proposal", "crew-sheet", "retest-sheet"]);
  expect(await kinds("mixed-crawlspace-retest.json")).toEqual([
    "proposal",
    "crew-sheet",
    "retest-sheet",
    "certificate",
  ]);
});

describe("an instrument whose calibration had run out", () => {
  const papers = { proposal: proposalView, crew: crewSheetView, retest: retestSheetView, certificate: certificateView };

  test.each(["en", "es"] as const)(
    "is named on top of every paper that stands on its readings (%s)",
    async (language) => {
      const { job, reference } = await exampleWithReference("mixed-crawlspace-retest.json");
      const expired = structuredClone(job);
      expired.instruments!.fans![0]!.calibrationDueDate = "2026-11-19";
      const solve = await createHighsSolver();
      const [good, bad] = await Promise.all(
        [job, expired].map((each) => estimate(each, reference, { solve, draws: 0, seed: 1 })),
      );
      for (const [name, viewOf] of Object.entries(papers)) {
        const notices = (which: typeof job, result: typeof good) =>
          viewOf({ job: which, result: result!, language, isoDate: "2026-11-25" }).notices.filter(({ text }) =>
            text.includes(job.instruments!.fans![0]!.name),
          );
        expect(notices(job, good), name).toEqual([]);
        expect(notices(expired, bad), name).toHaveLength(1);
        expect(notices(expired, bad)[0]!.text, name).toMatch(
          language === "en" ? /November 19, 2026/ : /19 de noviembre de 2026/,
        );
      }
      // It counts from the last day on which it was used: the retest of November 20.
      expect(bad!.warnings.filter(({ code }) => code === "calibration-expired").map(({ path }) => path)).toEqual([
        "#/instruments/fans/0",
      ]);
    },
  );
});

describe("the crew's walk on the sheet", () => {
  test("each place once, told by its rule, the check of each place where the place ends", async () => {
    for (const file of ["hot-humid-two-systems.json", "cold-attic-furnace.json", "mixed-crawlspace-retest.json"]) {
      const { job, result } = await estimatedExample(file);
      const view = crewSheetView({ job, result, ...DATE });
      expect(view.lead.join(" ")).toContain("The order is your walk");
      const stages = view.sections.filter(({ id }) => id.startsWith("stage-"));
      const places = stages.map(({ title }) => title.replace(/^\d+\. /, ""));
      expect(new Set(places).size).toBe(places.length);
      expect(stages.length).toBe(result.retest!.stagedChecks.length);
      const numbers = stages.flatMap(({ blocks }) =>
        blocks.flatMap((block) => (block.kind === "table" ? block.table.rows.map(([number]) => Number(number)) : [])),
      );
      const inOrder = result.retest!.stagedChecks.flatMap(({ afterSiteIds }) =>
        afterSiteIds.map((id) => job.sites.findIndex((site) => site.id === id) + 1),
      );
      expect(numbers).toEqual(inOrder);
    }
  });

  test("relations between repairs stand at the leak", async () => {
    const { job, result } = await estimatedExample("mixed-crawlspace-retest.json");
    const scope = structuredClone(result.scope);
    const chosen = scope.options.find(({ id }) => id === scope.chosen)!;
    Object.assign(chosen.measures[0]!, { firstSiteIds: [chosen.measures[1]!.siteId] });
    Object.assign(chosen.measures[1]!, { togetherWithSiteIds: [chosen.measures[2]!.siteId] });
    for (const [language, first, together] of [
      ["en", "First leak 2.", "Done together with leak 3."],
      ["es", "Antes: fuga 2.", "Se hace junto con: fuga 3."],
    ] as const) {
      const view = crewSheetView({ job, result: { ...result, scope }, ...DATE, language });
      const text = view.sections.flatMap(sectionText).join("\n");
      expect(text).toContain(first);
      expect(text).toContain(together);
    }
  });
});
