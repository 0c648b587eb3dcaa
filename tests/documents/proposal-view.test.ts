import { describe, expect, test } from "vitest";
import { openBlocks } from "#lib/documents/document-view.ts";
import type { ProposalInput } from "#lib/documents/proposal/proposal-context.ts";
import { proposalView } from "#lib/documents/proposal-view.ts";
import type { Rebate } from "#lib/job/price-book-schema.ts";
import { DEMO_PRICE_BOOK } from "#lib/scope/demo-price-book.ts";
import { EXAMPLE_FILES } from "#tests/estimate/example-jobs.ts";
import { estimatedExample, largeExample } from "./estimated-examples.ts";
import { blockText, sectionOf, sectionText } from "./view-text.ts";

const viewOf = async (file: string, more: Partial<ProposalInput> = {}) =>
  proposalView({ ...(await estimatedExample(file)), language: "en", isoDate: "2026-11-25", ...more });

describe("the proposal as data", () => {
  test("answers in the order in which a homeowner asks", async () => {
    const { sections } = await viewOf("cold-attic-furnace.json");
    expect(sections.map(({ id }) => id)).toEqual([
      "found",
      "means",
      "propose",
      "options",
      "savings",
      "nothing",
      "visit",
      "yourself",
      "uncertain",
      "safety",
      "proof",
      "words",
      "assumed",
      "workings",
      "sources",
    ]);
  });

  test("the verdict stands first, and an honest no is said as a no", async () => {
    expect((await viewOf("cold-attic-furnace.json")).heading).toBe("Your ducts are worth sealing.");
    const no = await viewOf("inside-ducts-furnace.json");
    expect(no.heading).toBe("Sealing your ducts is not worth its price.");
    expect(no.lead.join(" ")).toContain("we do not advise this work");
    expect(sectionText(sectionOf(no, "options")).join(" ")).toContain("Do nothing");
    const advised = no.sections
      .flatMap(({ blocks }) => openBlocks(blocks))
      .flatMap((block) => (block.kind === "options" ? block.options : []))
      .filter(({ isRecommended }) => isRecommended);
    expect(advised.map(({ id }) => id)).toEqual(["nothing"]);
  });

  test.each(EXAMPLE_FILES)(
    "%s: an estimate and no guarantee, marked as invented, dated, with engine and hashes",
    async (file) => {
      const view = await viewOf(file);
      const { result } = await estimatedExample(file);
      expect(view.notices.map(({ title }) => title)).toEqual(["An invented example", "An estimate, not a guarantee"]);
      expect(view.footer).toContain("not a guarantee");
      expect(view.footer).toContain("November 25, 2026");
      const workings = sectionText(sectionOf(view, "workings")).join(" ");
      expect(workings).toContain(result.engineVersion);
      expect(workings).toContain(result.jobHash.slice(0, 12));
    },
  );

  test.each(["en", "es"] as const)("no caution can be dropped, known or not (%s)", async (language) => {
    const { job, result } = await estimatedExample("cold-attic-furnace.json");
    const strange = { ...result.cautions[0]!, id: "made-for-this-test", title: "A new danger", text: "Keep away." };
    const view = proposalView({
      job,
      result: { ...result, cautions: [...result.cautions, strange] },
      language,
      isoDate: "2026-11-25",
    });
    const notices = openBlocks(sectionOf(view, "safety").blocks).filter(({ kind }) => kind === "notice");
    expect(notices).toHaveLength(result.cautions.length + 1);
    expect(notices.flatMap(blockText)).toContain("Keep away.");
  });

  test("the parts of the price add up to the cent", async () => {
    for (const file of EXAMPLE_FILES) {
      const { result } = await estimatedExample(file);
      const chosen = result.scope.options.find(({ id }) => id === result.scope.chosen);
      if (!chosen) continue;
      const table = openBlocks(sectionOf(await viewOf(file), "options").blocks).flatMap((block) =>
        block.kind === "table" && block.table.hasTotal ? [block.table] : [],
      )[0]!;
      const cents = table.rows.map((row) => Math.round(100 * Number(row[1]!.replaceAll(",", ""))));
      expect(cents.at(-1)).toBe(chosen.priceUsdCents);
      expect(cents.slice(0, -1).reduce((sum, part) => sum + part, 0)).toBe(chosen.priceUsdCents);
      expect(cents.every((part) => part >= 0)).toBe(true);
    }
  });

  test("a rebate stands with its amount and rules beside the plain price, and never in it", async () => {
    const { job, result } = await estimatedExample("cold-attic-furnace.json");
    const chosen = result.scope.options.find(({ id }) => id === result.scope.chosen)!;
    const rebate = (conditions: Partial<Rebate["conditions"]>, atMostUsdCents?: number): Rebate => ({
      id: "r",
      title: "Invented rebate",
      pays: { by: "cfm25-removed", eachCfm25UsdCents: 150 },
      conditions: { measure: "total", ...conditions },
      conditionText: "Apply within 90 days",
      ...(atMostUsdCents === undefined ? {} : { atMostUsdCents }),
    });
    const optionsWith = (each: Rebate) =>
      sectionText(
        sectionOf(
          proposalView({
            job: { ...job, priceBook: { ...DEMO_PRICE_BOOK, rebates: [each] } },
            result,
            language: "en",
            isoDate: "2026-11-25",
          }),
          "options",
        ),
      ).join("\n");
    // $1.50 for each whole cfm at 25 Pa that the repairs of the option take from the total leakage.
    const removedCfm25 = chosen.measures.reduce((sum, { removesCfm25 }) => sum + removesCfm25, 0);
    const usd = Math.floor(removedCfm25) * 1.5;
    expect(usd).toBeGreaterThan(200);
    const met = optionsWith(rebate({ leastRemovedShare: 0.5 }));
    const amount = usd.toLocaleString("en-US", {
      style: "currency",
      currency: "USD",
      minimumFractionDigits: usd % 1 === 0 ? 0 : 2,
    });
    expect(met).toContain(`about ${amount} may come back to you`);
    expect(met).toContain("at least 50% of the leaks in all is gone; the second test shows it; Apply within 90 days");
    expect(optionsWith(rebate({}, 10_000))).toContain("about $100 may come back");
    const missed = optionsWith(rebate({ mostLeftCfm25: 1 }));
    expect(missed).toContain("count on nothing from it");
    for (const words of [met, missed]) {
      const price = (chosen.priceUsdCents / 100).toLocaleString("en-US", { minimumFractionDigits: 2 });
      expect(words).toContain(`You pay\n${price}`);
      expect(words).toContain("before any rebate");
    }
  });

  test.each([
    ["en", "Change order for", "On November 20, 2026 you ordered “The essential” at $463."],
    ["es", "Orden de cambio para", "El 20 de noviembre de 2026 usted pidió «Lo esencial» a $463."],
  ] as const)("a change order names the paper that it changes and what was ordered with it (%s)", async (...row) => {
    const [language, title, text] = row;
    const view = await viewOf("cold-attic-furnace.json", {
      language,
      changes: {
        fingerprint: "ab".repeat(32),
        acceptedOn: "2026-11-20",
        ordered: {
          en: { option: "The essential", price: "$463" },
          es: { option: "Lo esencial", price: "$463" },
        },
      },
    });
    expect(view.title.startsWith(title)).toBe(true);
    expect(view.facts.join(" ")).toContain("abababababab");
    expect(view.notices.map((notice) => notice.text).join(" ")).toContain(text);
  });

  test("a missed goal is answered for, or said to be open", async () => {
    const proof = async (more: Partial<ProposalInput>) =>
      sectionText(sectionOf(await viewOf("cold-attic-furnace.json", more), "proof")).join(" ");
    expect(await proof({})).toContain("does not say what happens");
    const firm = { name: "Invented Sealing" };
    expect(await proof({ contractor: { ...firm, missedGoal: { rule: "work-on" } } })).toContain("at no charge to you");
    expect(await proof({ contractor: { ...firm, missedGoal: { rule: "credit", creditUsdCents: 15_000 } } })).toContain(
      "$150 comes off the price",
    );
  });

  test("a goal that is out of reach is not promised", async () => {
    const { result } = await estimatedExample("hot-humid-two-systems.json");
    const chosen = result.scope.options.find(({ id }) => id === result.scope.chosen)!;
    expect(chosen.probabilityOfReachingTarget).toBeLessThan(0.5);
    const proof = sectionText(sectionOf(await viewOf("hot-humid-two-systems.json"), "proof")).join(" ");
    expect(proof).toContain("do not count on the goal");
  });

  test("paid over time: the payment of the standard annuity table (10,000 at 6 % in 60 months is 193.33)", async () => {
    const { job, result } = await estimatedExample("cold-attic-furnace.json");
    const options = result.scope.options.map((option) => ({ ...option, priceUsdCents: 1_000_000 }));
    const view = proposalView({
      job,
      result: { ...result, scope: { ...result.scope, options } },
      language: "en",
      isoDate: "2026-11-25",
      contractor: { name: "Invented", financing: { lender: "an invented bank", yearlyRate: 0.06, monthsCount: 60 } },
    });
    expect(sectionText(sectionOf(view, "options")).join(" ")).toContain("about $193.33 a month for 60 months");
  });

  test("a suspected asbestos leak is left, with that reason", async () => {
    const { job, result } = await largeExample();
    const sites = job.sites.map((site) => (site.id === "leak-59" ? { ...site, isSuspectedAsbestos: true } : site));
    const view = proposalView({ job: { ...job, sites }, result, language: "en", isoDate: "2026-11-25" });
    expect(sectionText(sectionOf(view, "options")).join(" ")).toContain("Leak 60: there may be asbestos");
  });

  test("without draws no range is claimed", async () => {
    const { job, result } = await estimatedExample("cold-attic-furnace.json");
    const plain = JSON.parse(
      JSON.stringify({ ...result, draws: 0, drivers: [] }, (key, value) =>
        ["p10", "p50", "p90"].includes(key) ? undefined : (value as unknown),
      ),
    ) as typeof result;
    const view = proposalView({ job, result: plain, language: "en", isoDate: "2026-11-25" });
    expect(JSON.stringify(view)).not.toContain("could be");
  });

  test("plain JSON: it comes back from storage as it went in", async () => {
    const view = await viewOf("hot-humid-two-systems.json");
    expect(JSON.parse(JSON.stringify(view))).toEqual(JSON.parse(JSON.stringify(view)));
    expect(JSON.stringify(view)).not.toMatch(/NaN|Infinity|undefined/);
  });
});
