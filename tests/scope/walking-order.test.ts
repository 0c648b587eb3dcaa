import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LEAK_KIND_IDS } from "#lib/job/leak-kinds.ts";
import { type WalkedMeasure, walkingOrder } from "#lib/scope/walking-order.ts";

type Sites = Parameters<typeof walkingOrder>[0]["sites"];

const site = (id: string, placeId: string, kind: Sites[number]["kind"], more: Partial<Sites[number]> = {}) => ({
  id,
  systemId: "main",
  side: "supply" as const,
  placeId,
  kind,
  ...more,
});
const removing = (sites: Sites, cfm25: Readonly<Record<string, number>> = {}): WalkedMeasure[] =>
  sites.map(({ id }) => ({ siteId: id, removesCfm25: cfm25[id] ?? 10 }));
const systems = [{ id: "main", airHandlerPlaceId: "garage" }];

describe("the crew's walk (common trade practice)", () => {
  it("starts at the air handler although the attic leaks more, and goes from the cabinet to the registers", () => {
    const sites = [
      site("boot", "attic", "boot-to-drywall"),
      site("trunk-seam", "attic", "seam"),
      site("collar", "attic", "flexible-connection"),
      site("return-seam", "garage", "seam", { side: "return" }),
      site("plenum", "garage", "plenum-joint"),
      site("cabinet", "garage", "air-handler-cabinet", { side: "return" }),
      site("floor", "crawl", "boot-to-drywall"),
    ];
    const stages = walkingOrder({ measures: removing(sites, { boot: 90, floor: 5 }), sites, systems });
    expect(stages).toEqual([
      { placeId: "garage", siteIds: ["cabinet", "plenum", "return-seam"] },
      { placeId: "attic", siteIds: ["trunk-seam", "collar", "boot"] },
      { placeId: "crawl", siteIds: ["floor"] },
    ]);
  });

  it("goes along the drawing where leaks were put on it", () => {
    const at = (id: string, alongShare: number) =>
      site(id, "attic", "take-off", { drawnAt: { part: "take-off", alongShare } });
    const sites = [at("far", 0.9), at("near", 0.1), at("middle", 0.5)];
    expect(walkingOrder({ measures: removing(sites), sites, systems })[0]!.siteIds).toEqual(["near", "middle", "far"]);
  });

  it("does the torn run before the joints on it, even where they stand nearer or in a place that would come first", () => {
    const sites = [
      site("plenum-joint", "attic", "plenum-joint", { partOfSiteId: "torn" }),
      site("torn", "attic", "damaged-run"),
      site("boot", "garage", "boot-to-drywall", { partOfSiteId: "torn" }),
    ];
    expect(walkingOrder({ measures: removing(sites), sites, systems })).toEqual([
      { placeId: "attic", siteIds: ["torn", "plenum-joint"] },
      { placeId: "garage", siteIds: ["boot"] },
    ]);
  });

  it("sprays last, once the wide gaps are closed", () => {
    const sites = [site("off", "attic", "disconnected-run")];
    const measures = [{ siteId: "main", removesCfm25: 200, firstSiteIds: ["off"] }, ...removing(sites)];
    expect(walkingOrder({ measures, sites, systems }).map(({ siteIds }) => siteIds)).toEqual([["off"], ["main"]]);
  });

  it("finds the air handler by its own leaks where nobody said where it stands", () => {
    const sites = [site("boot", "attic", "boot-to-drywall"), site("cabinet", "closet", "air-handler-cabinet")];
    const measures = removing(sites, { boot: 90 });
    expect(walkingOrder({ measures, sites, systems: [{ id: "main" }] })[0]!.placeId).toBe("closet");
  });

  it("enters a place twice only where two places wait for each other", () => {
    const sites = [
      site("a", "attic", "damaged-run"),
      site("a-end", "crawl", "flexible-connection", { partOfSiteId: "a" }),
      site("c", "crawl", "damaged-run"),
      site("c-end", "attic", "flexible-connection", { partOfSiteId: "c" }),
    ];
    const stages = walkingOrder({ measures: removing(sites, { a: 50 }), sites, systems });
    expect(stages.map(({ siteIds }) => siteIds)).toEqual([["a"], ["a-end", "c"], ["c-end"]]);
  });

  it("whatever the leaks: each is done once, no place twice, nothing before what comes first, the same in any order", () => {
    const leak = fc.record({
      placeId: fc.constantFrom("attic", "garage", "crawl"),
      systemId: fc.constantFrom("main", "second"),
      side: fc.constantFrom("supply", "return"),
      kind: fc.constantFrom(...LEAK_KIND_IDS),
      isPart: fc.boolean(),
      cfm25: fc.integer({ min: 1, max: 90 }),
    });
    fc.assert(
      fc.property(fc.array(leak, { minLength: 1, maxLength: 20 }), (drawn) => {
        const sites: Sites = drawn.map(({ isPart, cfm25: _, ...each }, index) => ({
          id: `leak-${index}`,
          ...each,
          ...(index > 0 && isPart && !drawn[0]!.isPart ? { partOfSiteId: "leak-0" } : {}),
        }));
        const measures = sites.map(({ id }, index) => ({ siteId: id, removesCfm25: drawn[index]!.cfm25 }));
        const stages = walkingOrder({ measures, sites, systems });
        const order = stages.flatMap(({ siteIds }) => siteIds);
        expect([...order].sort()).toEqual(sites.map(({ id }) => id).sort());
        expect(new Set(stages.map(({ placeId }) => placeId)).size).toBe(stages.length);
        for (const { id, partOfSiteId } of sites)
          if (partOfSiteId) expect(order.indexOf(partOfSiteId)).toBeLessThan(order.indexOf(id));
        const turned = walkingOrder({ measures: [...measures].reverse(), sites: [...sites].reverse(), systems });
        expect(turned).toEqual(stages);
      }),
    );
  });
});
