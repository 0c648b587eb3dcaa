import { describe, expect, it } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import { leakWalk } from "#lib/estimate/leak-walk.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { exampleDocument, exampleWithReference } from "./example-jobs.ts";

const ATTIC = "cold-attic-furnace.json";

async function walkWith(change: (document: ReturnType<typeof exampleDocument>) => void, file = ATTIC) {
  const document = exampleDocument(file);
  change(document);
  const job = parseJob(document);
  return { job, walk: leakWalk(job, await loadReferenceData(job))[0]! };
}

describe("leakWalk", () => {
  it("says the same sizes as the estimate, to the last digits, for every example", async () => {
    for (const file of [
      ATTIC,
      "mixed-crawlspace-heat-pump.json",
      "hot-humid-two-systems.json",
      "mixed-crawlspace-retest.json",
    ]) {
      const { job, reference } = await exampleWithReference(file);
      const result = await estimate(job, reference);
      const sites = new Map(leakWalk(job, reference).flatMap((walk) => walk.sites.map(({ id, cfm25 }) => [id, cfm25])));
      expect(sites.size, file).toBe(job.sites.length);
      for (const { id, cfm25 } of result.sites) expect(sites.get(id), `${file} ${id}`).toBeCloseTo(cfm25.value, 6);
    }
  });

  it("leaves nothing of what was measured out: found and not yet found add up to the total, within its doubt", async () => {
    const { walk } = await walkWith(() => undefined);
    const total = walk.measured.find(({ name }) => name === "total")!;
    const sum = [...walk.sites, ...walk.notYetFound].reduce((all, { cfm25 }) => all + cfm25, 0);
    expect(Math.abs(sum - total.cfm25)).toBeLessThan(2 * total.standardUncertaintyCfm25);
  });

  it("hides everything in the quarters before a leak is found, and less with each leak", async () => {
    const unfound = async (count: number) => {
      const { walk } = await walkWith((document) => {
        document.sites = (document.sites as unknown[]).slice(0, count);
      });
      return walk.notYetFound.reduce((sum, { cfm25 }) => sum + cfm25, 0);
    };
    const [none, some, all] = [await unfound(0), await unfound(2), await unfound(5)];
    expect(none).toBeGreaterThan(some);
    expect(some).toBeGreaterThan(all);
  });

  it("points at the side that hides most, at where its ducts run, and not at what was seen there already", async () => {
    const { job, walk } = await walkWith((document) => {
      document.sites = (document.sites as { side: string }[]).filter(({ side }) => side === "supply").slice(-1);
    });
    const next = walk.lookNext!;
    const most = [...walk.notYetFound].sort((a, b) => b.cfm25 - a.cfm25)[0]!;
    expect([next.side, next.outside]).toEqual([most.side, most.outside]);
    const places = job.systems[0]!.runs.filter(({ side }) => side === next.side).map(({ placeId }) => placeId);
    for (const placeId of next.placeIds) expect(places).toContain(placeId);
    const seen = job.sites.filter(({ side }) => side === next.side).map(({ kind }) => kind);
    for (const kind of next.kinds) expect(seen).not.toContain(kind);
    expect(next.kinds.length).toBeGreaterThan(0);
  });

  it("points nowhere once less than a tenth is hidden", async () => {
    const { walk } = await walkWith(() => undefined);
    const hidden = walk.notYetFound.reduce((sum, { cfm25 }) => sum + cfm25, 0);
    expect(hidden).toBeLessThan(0.1 * Math.max(...walk.measured.map(({ cfm25 }) => cfm25)));
    expect(walk.lookNext).toBeNull();
    const crawlspace = (await walkWith(() => undefined, "mixed-crawlspace-heat-pump.json")).walk;
    expect(crawlspace.lookNext).not.toBeNull();
  });

  it("puts crossover and belly first in a manufactured home", async () => {
    const { walk } = await walkWith((document) => {
      (document.house as { kind: string }).kind = "manufactured";
      document.sites = [];
    });
    expect(walk.lookNext!.kinds.slice(0, 2)).toEqual(["crossover", "belly"]);
  });

  it("says when found leaks add up to more than was measured, and by which test", async () => {
    const huge = { from: "estimate", estimateCfm25: 900, relativeUncertaintyRatio: 0.2 };
    const { walk } = await walkWith((document) => {
      (document.sites as { size?: unknown }[])[0]!.size = huge;
    });
    expect(walk.foundAbove.map(({ name }) => name)).toContain("total");
    expect(walk.foundAbove[0]!.lookedLikeCfm25).toBeGreaterThan(walk.foundAbove[0]!.measuredCfm25);
    expect((await walkWith(() => undefined)).walk.foundAbove).toEqual([]);
  });

  it("asks for the total first, then for what is least sure; with nothing measured it hides nothing", async () => {
    const { walk } = await walkWith((document) => {
      document.tests = [];
    });
    expect(walk.tellsMost?.name).toBe("total");
    expect(walk.notYetFound).toEqual([]);
    expect(walk.lookNext).toBeNull();
    const measured = (await walkWith(() => undefined)).walk;
    const names = measured.measured.map(({ name }) => name);
    expect(names).not.toContain(measured.tellsMost!.name);
  });
});
