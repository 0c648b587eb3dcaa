import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { DEMO_IDENTITIES, DEMO_ORGANIZATIONS } from "#lib/access/demo-identities.ts";
import { seedDemo } from "#lib/access/seed-demo.ts";
import { type Claim, claimSchema } from "#lib/claims/claim-schema.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { writeHpxml } from "#lib/exchange/hpxml/write-hpxml.ts";
import { receiveHpxml } from "#lib/work/claims/receive-hpxml.ts";
import { exampleWithReference } from "#tests/estimate/example-jobs.ts";
import { type TemporaryDatabase, temporaryDatabase } from "#tests/store/temporary-database.ts";

const { reviewer, estimator } = DEMO_IDENTITIES;
const contractorId = DEMO_ORGANIZATIONS.contractor.id;
let database: TemporaryDatabase;
let xml: string;
let savedKWh: number;

beforeAll(async () => {
  database = await temporaryDatabase();
  await seedDemo(database.store, [], ENGINE_VERSION);
  const { job, reference } = await exampleWithReference("mixed-crawlspace-retest.json");
  const result = await estimate(job, reference);
  savedKWh = result.savings.electricityKWh.value;
  xml = writeHpxml({ job, result, elevationFt: reference.climate.elevationFt, date: "2026-11-25" });
});
afterAll(() => database.remove());

const receive = (text: string, contractor: string | undefined = contractorId) =>
  receiveHpxml(database.store, reviewer, { text, sourceName: "house.xml", contractorId: contractor });
const stored = async (id: string) => {
  const [claim, flags] = await database.store.withOrganization(reviewer, async (scope) => [
    await scope.claims.find(id),
    await scope.claimReview.flags(id),
  ]);
  return { claim, flags, packet: claimSchema.parse(JSON.parse(claim.packet)) satisfies Claim };
};

describe("a claim from HPXML", () => {
  test("keeps which file it came in, the leakage that stands in it, and what was not read", async () => {
    const { claimId } = await receive(xml);
    const { claim, packet } = await stored(claimId);
    expect(claim).toMatchObject({ organizationId: contractorId, recomputeOutcome: "same", state: "submitted" });
    expect(Buffer.byteLength(claim.packet)).toBeLessThanOrEqual(12_000);
    expect(packet.draws).toBe(0);
    expect(packet.origin).toMatchObject({ standard: "HPXML", fileName: "house.xml" });
    expect(packet.origin?.savedElectricityKWh).toBeCloseTo(savedKWh, 6);
    expect(packet.origin?.unread.join()).toContain("the standard keeps no direction of the test fan");
    // The fall that the list shows is that of the two measurements in the file.
    const flows = packet.job.tests.map((each) => ("points" in each && each.kind !== "delta-q" ? each.points[0] : null));
    expect(flows.every((point) => point?.flowCfm !== undefined && point.fanPressurePa === undefined)).toBe(true);
    expect(claim.afterToOutsideCfm25).toBeLessThan(claim.beforeToOutsideCfm25);
  });

  test("says what cannot be checked, and where the file's own saving is far from ours", async () => {
    const { flags } = await stored((await receive(xml)).claimId);
    const codes = flags.map(({ code }) => code);
    expect(codes).toContain("readings-not-in-file");
    expect(codes).toContain("evidence-missing");
    const claiming = async (kWh: number, street: string) => {
      const text = xml.replace(/<TotalSavings>[^<]*</, `<TotalSavings>${kWh}<`).replaceAll("Quarry", street);
      const claim = await stored((await receive(text)).claimId);
      return { ...claim, flag: claim.flags.find(({ code }) => code === "savings-not-of-file") };
    };
    const boasting = await claiming(9000, "Marble");
    expect(boasting.flag?.evidence).toMatchObject([
      { path: "#/origin/savedElectricityKWh", says: expect.stringContaining("9,000 kWh") },
    ]);
    const own = boasting.packet.numbers["savings/electricityKWh"]![0]!;
    expect((await claiming(own * 1.2, "Slate")).flag).toBeUndefined();
    expect((await claiming(own * 1.4, "Chalk")).flag).toBeDefined();
  });

  test("sent twice is one claim", async () => {
    expect((await receive(xml)).claimId).toBe((await receive(xml)).claimId);
  });

  test("is refused in plain words: no XML, nothing measured after, nobody's, or not asked by the program", async () => {
    await expect(receive("{}")).rejects.toThrow(/not XML|outermost/);
    const [start, second] = [xml.indexOf("<Building>"), xml.lastIndexOf("<Building>")];
    const onlyBefore = xml.slice(0, second) + xml.slice(xml.indexOf("<Project>"));
    expect(start).toBeLessThan(second);
    await expect(receive(onlyBefore)).rejects.toThrow("no retest");
    await expect(receive(xml, undefined)).resolves.toBeDefined();
    await expect(receive(xml, reviewer.organizationId)).rejects.toThrow("whose claim");
    await expect(receiveHpxml(database.store, estimator, { text: xml, sourceName: "h.xml" })).rejects.toThrow(
      "may not",
    );
  });
});
