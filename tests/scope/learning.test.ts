import { describe, expect, it } from "vitest";
import { withLearnedEffects } from "#lib/scope/learned-catalogue.ts";
import { learnRepairEffects, type RepairBelief, type SealingRetest } from "#lib/scope/learning.ts";
import { STARTING_CATALOGUE } from "#lib/scope/repairs.ts";
import { expectClose } from "#tests/expect-close.ts";
import { seededRandom } from "./random-problem.ts";

const catalogue: RepairBelief[] = [
  { repairId: "mastic", remainingShare: 0.1, remainingSpreadShare: 0.08 },
  { repairId: "tape", remainingShare: 0.2, remainingSpreadShare: 0.12 },
];

/** n sites of one repair, tested almost exactly, of which a share is left. */
const retestOf = (repairId: string, sitesCount: number, leftShare: number): SealingRetest => ({
  treated: [{ repairId, cfm25: 100, sitesCount }],
  removedCfm25: 100 * (1 - leftShare),
  standardUncertaintyCfm25: 1e-6,
});

describe("learning from one's own retests", () => {
  it("is the catalogue, with counts of 0, before the first retest", () => {
    for (const effect of learnRepairEffects({ catalogue, retests: [] })) {
      expect(effect).toMatchObject({
        remainingShare: effect.catalogueShare,
        retestsCount: 0,
        sitesCount: 0,
        ownEvidenceShare: 0,
      });
    }
  });

  it("weighs n sites against the catalogue's 10: the conjugate normal mean, by hand", () => {
    // (10 × 0.10 + 30 × 0.30) / 40 = 0.25; weight 30/40; sd 0.08/√40.
    const [mastic, tape] = learnRepairEffects({ catalogue, retests: [retestOf("mastic", 30, 0.3)] });
    expectClose({
      actual: mastic!.remainingShare,
      expected: 0.25,
      relativeTolerance: 1e-6,
      reason: "the test's own doubt is 1e-6",
    });
    expectClose({
      actual: mastic!.ownEvidenceShare,
      expected: 0.75,
      relativeTolerance: 1e-6,
      reason: "the test's own doubt is 1e-6",
    });
    const expected = 0.08 / Math.sqrt(40);
    expectClose({
      actual: mastic!.shareStandardUncertainty,
      expected,
      relativeTolerance: 1e-6,
      reason: "the test's own doubt is 1e-6",
    });
    expect(mastic).toMatchObject({ retestsCount: 1, sitesCount: 30 });
    expect(tape).toMatchObject({ remainingShare: 0.2, ownEvidenceShare: 0 });
  });

  it("does not depend on the order of the retests", () => {
    const mixed: SealingRetest = {
      treated: [
        { repairId: "mastic", cfm25: 60, sitesCount: 4 },
        { repairId: "tape", cfm25: 40, sitesCount: 3 },
      ],
      removedCfm25: 70,
      standardUncertaintyCfm25: 5,
    };
    const retests = [retestOf("mastic", 3, 0.2), mixed, retestOf("tape", 5, 0.1)];
    const forward = learnRepairEffects({ catalogue, retests });
    const backward = learnRepairEffects({ catalogue, retests: [...retests].reverse() });
    forward.forEach((effect, index) => {
      const expected = effect.remainingShare;
      expectClose({
        actual: backward[index]!.remainingShare,
        expected,
        relativeTolerance: 1e-9,
        reason: "rounding of the updates",
      });
    });
  });

  it("finds the true effects of a firm whose work differs from the catalogue, from mixed jobs alone", () => {
    const random = seededRandom(42);
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const truth = { mastic: 0.22, tape: 0.45 };
    const retests = Array.from({ length: 150 }, (): SealingRetest => {
      const [mastic, tape] = [40 + 80 * random(), 20 + 60 * random()];
      const left = mastic * (truth.mastic + (0.08 * normal()) / 3) + tape * (truth.tape + (0.12 * normal()) / 2);
      return {
        treated: [
          { repairId: "mastic", cfm25: mastic, sitesCount: 9 },
          { repairId: "tape", cfm25: tape, sitesCount: 4 },
        ],
        removedCfm25: mastic + tape - left + 5 * normal(),
        standardUncertaintyCfm25: 5,
      };
    });
    const learned = learnRepairEffects({ catalogue, retests });
    for (const effect of learned) {
      const miss = Math.abs(effect.remainingShare - truth[effect.repairId as keyof typeof truth]);
      expect(miss).toBeLessThan(4 * effect.shareStandardUncertainty + 0.01);
      expect(effect.shareStandardUncertainty).toBeLessThan(0.02);
      expect(effect.ownEvidenceShare).toBeGreaterThan(0.7);
    }
  });

  it("barely moves on a retest that can tell nothing", () => {
    const vague = { ...retestOf("mastic", 10, 0.9), standardUncertaintyCfm25: 500 };
    const [mastic] = learnRepairEffects({ catalogue, retests: [vague] });
    expect(Math.abs(mastic!.remainingShare - 0.1)).toBeLessThan(0.001);
    expect(mastic!.ownEvidenceShare).toBeLessThan(0.01);
  });

  it("refuses retests it cannot use", () => {
    const learn = (retest: SealingRetest) => () => learnRepairEffects({ catalogue, retests: [retest] });
    expect(learn(retestOf("unheard-of", 1, 0.1))).toThrow(/unheard-of/);
    expect(learn({ ...retestOf("mastic", 1, 0.1), standardUncertaintyCfm25: 0 })).toThrow(/standardUncertaintyCfm25/);
    expect(learn({ ...retestOf("mastic", 1, 0.1), removedCfm25: Number.NaN })).toThrow(/removedCfm25/);
  });

  it("changes the effect and nothing else in the catalogue, and leaves what nobody retested", () => {
    const beliefs = STARTING_CATALOGUE.repairs.map(({ id, ...rest }) => ({ ...rest, repairId: id }));
    const learned = learnRepairEffects({ catalogue: beliefs, retests: [retestOf("boot-sealant", 20, 0.3)] });
    const next = withLearnedEffects(STARTING_CATALOGUE, learned);
    const changed = next.repairs.filter((repair, index) => repair !== STARTING_CATALOGUE.repairs[index]);
    expect(changed.map(({ id }) => id)).toEqual(["boot-sealant"]);
    expect(changed[0]!.remainingShare).toBeGreaterThan(0.2);
    expect(changed[0]!.materials).toEqual(
      STARTING_CATALOGUE.repairs.find(({ id }) => id === "boot-sealant")!.materials,
    );
  });
});
