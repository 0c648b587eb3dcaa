import { describe, expect, it } from "vitest";
import { claimFacts } from "#lib/claims/claim-facts.ts";
import type { Claim } from "#lib/claims/claim-schema.ts";
import { createClaim } from "#lib/claims/create-claim.ts";
import { FLAGS } from "#lib/claims/flags/claim-flag.ts";
import { flagClaim } from "#lib/claims/flags/flag-claim.ts";
import type { NeighborClaim } from "#lib/claims/flags/neighbor-flags.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { exampleWithReference } from "#tests/estimate/example-jobs.ts";

const PHOTO = "a".repeat(64);

/** The example claim with a photo of every repair: nothing is missing. */
async function soundClaim(): Promise<Claim> {
  const { job, reference } = await exampleWithReference("mixed-crawlspace-retest.json");
  job.sites.forEach((site, index) => {
    site.photos = [{ sha256: `${index}${PHOTO.slice(1)}`, takenOn: "2026-11-20" }];
  });
  const result = await estimate(job, reference);
  return createClaim({
    job,
    reference,
    result,
    claimedBy: "Crew lead B (invented)",
    claimedOn: "2026-11-20",
    measureLifeYears: 18,
    netToGrossRatio: 1,
  });
}

const sound = await soundClaim();
const copy = () => structuredClone(sound);

function codesOf(claim: Claim, others: readonly NeighborClaim[] = []): string[] {
  const flags = flagClaim({ claim, elevationFt: 880, contractorId: "own", measureLifeYears: 18, others });
  for (const { evidence } of flags) {
    expect(evidence.length).toBeGreaterThan(0);
    for (const { path, says } of evidence) expect(path.length * says.length).toBeGreaterThan(20);
  }
  return flags.map(({ code }) => code).sort();
}

function neighbor(change: (facts: NeighborClaim) => void): NeighborClaim {
  const facts: NeighborClaim = {
    ...structuredClone(claimFacts(sound)),
    reference: "their-claim-7",
    contractorId: "own",
    premiseKey: "another premise",
    readingsHash: "other readings",
    photoHashes: [],
    instrumentUses: [],
    completedOn: "2026-06-01",
  };
  change(facts);
  return facts;
}

describe("a sound claim", () => {
  it("raises no flag, alone or beside a claim it shares nothing with", () => {
    expect(codesOf(sound)).toEqual([]);
    expect(codesOf(sound, [neighbor(() => undefined)])).toEqual([]);
  });
});

describe("the words of a flag", () => {
  it("explain innocently and accuse nobody", () => {
    for (const { title, innocentExplanation } of Object.values(FLAGS)) {
      expect(`${title} ${innocentExplanation}`).not.toMatch(
        /fraud|fake|cheat|suspicious|lie\b|false|forg|guilty|fabricat/i,
      );
      expect(innocentExplanation.length).toBeGreaterThan(40);
    }
  });
});

/** One planted fault each; exactly its flag must come up. */
const PLANTED: readonly [string, (claim: Claim) => void][] = [
  ["evidence-missing", ({ job }) => delete job.tests[2]!.time],
  ["evidence-missing", ({ job }) => delete job.tests[0]!.gaugeId],
  ["evidence-missing", ({ job }) => delete job.sites[0]!.photos],
  ["evidence-missing", ({ job }) => delete job.instruments!.gauges![0]!.calibrationDate],
  ["fan-flow-against-capacity", ({ job }) => (job.systems[0]!.cooling!.capacityBtuPerH = 60_000)],
  [
    "fan-pressure-outside-span",
    ({ job }) =>
      Object.assign(job.tests[2]!, { points: [{ ductPressurePa: -25, fanPressurePa: 12, restrictorId: "small" }] }),
  ],
  ["leakage-above-fan-flow", ({ numbers }) => (numbers["leakage/fractionOfFanFlow"] = [1.02])],
  [
    "saved-above-used",
    ({ numbers }) => (numbers["energy/electricity/savedKWh"] = [numbers["energy/electricity/beforeKWh"]![0]! + 1]),
  ],
  ["times-impossible", ({ job }) => (job.tests[2]!.date = "2026-11-11")],
  ["times-impossible", ({ job }) => Object.assign(job.tests[2]!, { date: "2026-11-12", time: "09:35" })],
  ["times-impossible", (claim) => (claim.claimedOn = "2026-11-19")],
  ["times-impossible", ({ job }) => (job.tests[1]!.time = "09:20")],
  ["instrument-out-of-calibration", ({ job }) => (job.instruments!.fans![0]!.calibrationDueDate = "2026-11-15")],
  ["instrument-out-of-calibration", ({ job }) => (job.instruments!.gauges![0]!.calibrationDate = "2026-11-15")],
];

describe("one planted fault", () => {
  it.each(PLANTED)("raises %s, and nothing else (case %#)", (code, plant) => {
    const claim = copy();
    plant(claim);
    expect(codesOf(claim)).toEqual([code]);
  });

  it("raises to-outside-above-total when the part reads above the whole beyond its doubt", () => {
    const claim = copy();
    const outside = structuredClone(claim.job.tests[0]!);
    Object.assign(outside, {
      kind: "leakage-to-outside",
      id: "outside",
      time: "10:30",
      houseToOutsidePressurePa: -25,
      ductToHousePressurePa: 0,
      points: [{ ductPressurePa: 0, fanPressurePa: 330, restrictorId: "medium" }],
    });
    claim.job.tests.push(outside);
    expect(codesOf(claim)).toContain("to-outside-above-total");
    Object.assign(outside, { points: [{ ductPressurePa: 0, fanPressurePa: 150, restrictorId: "medium" }] });
    expect(codesOf(claim)).not.toContain("to-outside-above-total");
  });

  it("raises exponent-unusual on a curve that no leak has", () => {
    const claim = copy();
    const steps = [10, 20, 30, 40, 50];
    const points = (exponent: number) =>
      steps.map((ductPressurePa) => ({ ductPressurePa: -ductPressurePa, flowCfm: 20 * ductPressurePa ** exponent }));
    Object.assign(claim.job.tests[0]!, { points: points(1.2) });
    expect(codesOf(claim)).toContain("exponent-unusual");
    Object.assign(claim.job.tests[0]!, { points: points(0.6) });
    expect(codesOf(claim)).not.toContain("exponent-unusual");
  });
});

describe("beside another claim", () => {
  const own = claimFacts(sound);
  it.each([
    ["premise-claimed-twice", neighbor((each) => (each.premiseKey = own.premiseKey))],
    [
      "earlier-measure-at-premise",
      neighbor((each) => Object.assign(each, { premiseKey: own.premiseKey, completedOn: "2015-03-01" })),
    ],
    ["photos-used-twice", neighbor((each) => (each.photoHashes = [own.photoHashes[2]!]))],
    ["readings-used-twice", neighbor((each) => (each.readingsHash = own.readingsHash))],
  ])("raises %s", (code, other) => {
    expect(codesOf(sound, [other])).toEqual([code]);
  });

  it("asks no more once the measure's life is over", () => {
    const old = neighbor((each) => Object.assign(each, { premiseKey: own.premiseKey, completedOn: "2007-03-01" }));
    expect(codesOf(sound, [old])).toEqual([]);
  });

  it("sees an instrument at two premises within half an hour, by name within a contractor and by serial number anywhere", () => {
    const use = { ...own.instrumentUses.find(({ testId }) => testId === "total-retest")!, time: "14:45" };
    const at = (change: Partial<NeighborClaim>, time = use.time) =>
      neighbor((each) => Object.assign(each, { instrumentUses: [{ ...use, time }] }, change));
    expect(codesOf(sound, [at({})])).toEqual(["instrument-in-two-places"]);
    expect(codesOf(sound, [at({}, "15:30")])).toEqual([]);
    expect(codesOf(sound, [at({ contractorId: "someone else" })])).toEqual([]);
    const numbered = copy();
    numbered.job.instruments!.gauges![0]!.serialNumber = "G-100";
    const theirs = { ...use, instrument: "G-100", hasSerialNumber: true };
    expect(codesOf(numbered, [at({ contractorId: "someone else", instrumentUses: [theirs] })])).toEqual([
      "instrument-in-two-places",
    ]);
  });

  it("finds equal readings whoever entered them, under whatever ids and dates", () => {
    const renamed = copy();
    for (const [index, test] of renamed.job.tests.entries())
      Object.assign(test, { id: `t${index}`, by: "X", date: "2025-01-01" });
    expect(claimFacts(renamed).readingsHash).toBe(own.readingsHash);
    Object.assign(renamed.job.tests[0]!, { baselineBeforePa: -0.3 });
    expect(claimFacts(renamed).readingsHash).not.toBe(own.readingsHash);
  });
});
