import { describe, expect, it } from "vitest";
import { LEAK_KIND_IDS, LEAK_KINDS, leakageOfBand, PRESSURE_GROUPS, SIZE_BANDS } from "#lib/job/leak-kinds.ts";
import { PLACE_KINDS } from "#lib/job/place.ts";
import { cautionsFor } from "#lib/scope/cautions.ts";
import { fittingRepairs, materialsOf } from "#lib/scope/fitting-repairs.ts";
import { NEVERS, neverOf, PREREQUISITES } from "#lib/scope/repair-rules.ts";
import { repairCatalogueSchema } from "#lib/scope/repair-schema.ts";
import { STARTING_CATALOGUE as catalogue } from "#lib/scope/repairs.ts";
import { reviseRepairs } from "#lib/scope/revise-repairs.ts";
import { SOURCES } from "#lib/sources/sources.ts";
import { expectClose } from "#tests/expect-close.ts";
import { auditUnits } from "#tests/units/unit-audit.ts";

const sourceIds = new Set(SOURCES.map(({ id }) => id));

describe("kinds of leak", () => {
  it("first guesses follow the orifice: a gap 32 in long and 1/32 in wide passes 5.3 cfm at 25 Pa (HPXML documentation, 1.06 √P)", () => {
    expectClose({
      actual: leakageOfBand("boot-to-drywall", "hairline"),
      expected: 5.3,
      relativeTolerance: 1e-9,
      reason: "1 in² exactly",
    });
  });

  it("pass more air the wider they look, for every kind", () => {
    for (const kind of LEAK_KIND_IDS) {
      const flows = SIZE_BANDS.map((band) => leakageOfBand(kind, band));
      expect(flows[0]).toBeGreaterThan(0);
      expect(flows).toEqual([...flows].sort((one, other) => one - other));
    }
  });

  it("carry their own id and a place along the duct", () => {
    for (const id of LEAK_KIND_IDS) {
      expect(LEAK_KINDS[id].id).toBe(id);
      expect(PRESSURE_GROUPS[LEAK_KINDS[id].pressureGroup]).toBeGreaterThan(0);
    }
  });
});

describe("the starting repairs", () => {
  it("hold to their schema, with every id once", () => {
    expect(repairCatalogueSchema.parse(catalogue)).toEqual(catalogue);
    const ids = catalogue.repairs.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("state the unit of each number, and the name agrees", () => {
    // Person hours by reach; amounts in the unit that the price book counts the material in.
    const { faults, numbersSeen } = auditUnits(repairCatalogueSchema, ["easy", "moderate", "hard", "amount"]);
    expect(faults).toEqual([]);
    expect(numbersSeen).toBeGreaterThan(6);
  });

  it("name a source that exists for every figure and rule", () => {
    const cited = catalogue.repairs.flatMap(({ evidence }) => Object.values(evidence).map(({ sourceId }) => sourceId));
    const rules = [...Object.values(PREREQUISITES), ...Object.values(NEVERS)].map(({ source }) => source.sourceId);
    expect([...cited, ...rules].filter((id) => !sourceIds.has(id))).toEqual([]);
  });

  it("offer something by hand for every kind and every size of leak", () => {
    for (const kind of LEAK_KIND_IDS) {
      for (const band of SIZE_BANDS) {
        const byHand = fittingRepairs({ catalogue, site: { kind, size: { from: "band", band } } }).filter(
          (repair) => !repair.reachesWholeSystem,
        );
        expect(byHand.length, `${kind} ${band}`).toBeGreaterThan(0);
      }
    }
  });

  it("take longer the harder the reach, and leave more the less they are a new duct", () => {
    for (const { labourHours } of catalogue.repairs) {
      expect(labourHours.easy).toBeLessThanOrEqual(labourHours.moderate);
      expect(labourHours.moderate).toBeLessThanOrEqual(labourHours.hard);
    }
    const left = (id: string) => catalogue.repairs.find((repair) => repair.id === id)!.remainingShare;
    expect(left("new-return")).toBeLessThan(left("seal-joist-bay"));
    expect(left("replace-run")).toBeLessThan(left("patch-and-mastic"));
  });

  it("let an owner do alone only what is done from a room and needs no test of burning appliances beyond the usual", () => {
    const alone = catalogue.repairs.filter(({ isSafeForOwner }) => isSafeForOwner).map(({ id }) => id);
    expect(alone).toEqual(["filter-slot-cover", "boot-sealant"]);
  });

  it("stop where asbestos is suspected: nothing fits", () => {
    expect(fittingRepairs({ catalogue, site: { kind: "seam", isSuspectedAsbestos: true } })).toEqual([]);
  });

  it("do not put mesh and mastic on a gap wider than 1/4 in (work specification 5.0106.1)", () => {
    const ids = (gapWidthIn: number) =>
      fittingRepairs({ catalogue, site: { kind: "seam", size: { from: "gap", gapLengthIn: 20, gapWidthIn } } }).map(
        ({ id }) => id,
      );
    expect(ids(0.2)).toContain("mastic-with-mesh");
    expect(ids(0.3)).not.toContain("mastic-with-mesh");
    expect(ids(0.3)).toContain("backed-mastic");
    expect(ids(1)).toEqual(["patch-and-mastic"]);
  });

  it("use material by the foot of gap: two feet take twice one foot", () => {
    const mastic = catalogue.repairs.find(({ id }) => id === "mastic-with-mesh")!;
    const use = (gapLengthIn: number) =>
      materialsOf(mastic, { kind: "seam", size: { from: "gap", gapLengthIn, gapWidthIn: 0.1 } }).find(
        ({ materialId }) => materialId === "mastic",
      )!.amount;
    expectClose({ actual: use(24), expected: 2 * use(12), relativeTolerance: 1e-12, reason: "proportional" });
    expectClose({ actual: use(12), expected: 0.03, relativeTolerance: 1e-12, reason: "one foot" });
  });

  it("never allow cloth tape or closing a combustion air opening, whatever is edited", () => {
    for (const repair of catalogue.repairs) {
      const never = neverOf({ ...repair, never: [] });
      expect(never).toContain("cloth-tape");
      expect(never).toContain("combustion-air-opening");
      expect(never).toContain("suspected-asbestos");
    }
  });
});

describe("editing the repairs", () => {
  const mastic = catalogue.repairs[0]!;
  const edit = { catalogue, date: "2026-03-01", by: "Owner", reason: "Our own retests", versionId: "2" };

  it("makes the next version, says what changed, and leaves the old one as it was", () => {
    const before = structuredClone(catalogue);
    const next = reviseRepairs({ ...edit, repairs: [{ ...mastic, remainingShare: 0.15 }] });
    expect(catalogue).toEqual(before);
    expect(next.versionId).toBe("2");
    expect(next.history[0]!.changes).toEqual([
      { repairId: mastic.id, field: "remainingShare", before: "0.1", after: "0.15" },
    ]);
    const third = reviseRepairs({
      ...edit,
      catalogue: next,
      versionId: "3",
      repairs: [{ ...mastic, id: "own-repair" }],
    });
    expect(third.repairs.length).toBe(catalogue.repairs.length + 1);
    expect(third.history.map(({ versionId, basedOnVersionId }) => [versionId, basedOnVersionId])).toEqual([
      ["2", "1"],
      ["3", "2"],
    ]);
  });

  it("refuses a used version, an edit that changes nothing, and a value outside its range", () => {
    expect(() => reviseRepairs({ ...edit, versionId: "1", repairs: [{ ...mastic, remainingShare: 0.15 }] })).toThrow(
      /exists already/,
    );
    expect(() => reviseRepairs({ ...edit, repairs: [mastic] })).toThrow(/Nothing is changed/);
    expect(() => reviseRepairs({ ...edit, repairs: [{ ...mastic, remainingShare: 1.5 }] })).toThrow(/remainingShare/);
  });
});

describe("cautions", () => {
  const site = { id: "s1", kind: "seam" as const, side: "return" as const, placeKind: "attic" as const };
  const ids = (facts: Parameters<typeof cautionsFor>[0]) => cautionsFor(facts).map(({ id }) => id);

  it("hold where nobody said otherwise: combustion, alarm, old materials", () => {
    const found = ids({ sites: [], spraysFromInside: false });
    for (const id of [
      "combustion-test",
      "co-alarm",
      "asbestos-age",
      "electricity",
      "fresh-air",
      "static-pressure",
      "mold",
      "local-rules",
    ]) {
      expect(found).toContain(id);
    }
  });

  it("stand at the spots where they matter", () => {
    const sites = [
      site,
      { ...site, id: "s2", placeKind: "garage" as const },
      { ...site, id: "s3", isSuspectedAsbestos: true },
    ];
    const found = cautionsFor({ sites, spraysFromInside: false, hasCombustionAppliance: true });
    const at = (id: string) => found.find((caution) => caution.id === id)?.appliesTo;
    expect(at("attic-heat")).toEqual(["s1", "s3"]);
    expect(at("garage-return")).toEqual(["s2"]);
    expect(at("asbestos-suspected")).toEqual(["s3"]);
    expect(at("return-near-combustion")).toEqual(["s2"]);
  });

  it("fall away only by fact: no appliance that burns fuel, a new home", () => {
    const found = ids({ sites: [], spraysFromInside: false, hasCombustionAppliance: false, builtYear: 2015 });
    expect(found).not.toContain("combustion-test");
    expect(found).not.toContain("asbestos-age");
    expect(found).toContain("electricity");
  });

  it("defer to local rules and never pass a number as a limit of safety", () => {
    const all = cautionsFor({
      sites: PLACE_KINDS.map((placeKind, index) => ({
        ...site,
        id: `s${index}`,
        placeKind,
        isSuspectedAsbestos: true,
        kind: "belly" as const,
      })),
      spraysFromInside: true,
      hasCombustionAppliance: true,
    });
    expect(all.length).toBeGreaterThan(14);
    expect(all.filter(({ text }) => /\d+\s*(ppm|Pa)\b/.test(text))).toEqual([]);
    expect(all.find(({ id }) => id === "combustion-test")!.text).toContain("local protocol");
  });
});
