import { describe, expect, it } from "vitest";
import { createClaim } from "#lib/claims/create-claim.ts";
import { readClaim } from "#lib/claims/read-claim.ts";
import { recomputeClaim } from "#lib/claims/recompute-claim.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { canonicalJson, contentHash } from "#lib/hash/content-hash.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { DEMO_PRICE_BOOK } from "#lib/scope/demo-price-book.ts";
import { STARTING_CATALOGUE } from "#lib/scope/repairs.ts";
import { recomputeText } from "#lib/work/claims/recompute-text.ts";
import { exampleWithReference } from "#tests/estimate/example-jobs.ts";

const RETEST = "mixed-crawlspace-retest.json";
/** RFC 8032 §7.1 test 1: secret key, public key and the signature of the empty message are published there. */
const RFC_8032_SECRET = "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60";
const RFC_8032_PUBLIC = "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a";

async function issue(privateKey?: string) {
  const { job, reference } = await exampleWithReference(RETEST);
  const result = await estimate(job, reference, { draws: 100, seed: 3 });
  return createClaim({
    job,
    reference,
    result,
    claimedBy: "Crew lead B (invented)",
    claimedOn: "2026-11-20",
    measureLifeYears: 18,
    netToGrossRatio: 1,
    signer: privateKey ? { privateKey } : undefined,
  });
}

const recompute = (packet: unknown, withDraws = true) =>
  recomputeClaim(packet, { loadReference: loadReferenceData, withDraws });
const throughJson = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

describe("a claim", () => {
  it("is at most 12 KB and recomputes to the same numbers, with and without draws", async () => {
    const claim = await issue();
    expect(Buffer.byteLength(canonicalJson(claim))).toBeLessThanOrEqual(12_000);
    expect((await recompute(throughJson(claim))).outcome).toBe("same");
    const without = await recompute(throughJson(claim), false);
    expect(without).toMatchObject({ outcome: "same", notes: ["ranges not recomputed"] });
  });

  it("stays within 12 KB with two years of monthly bills, each with all that a bill of two fuels may tell", async () => {
    const { job, reference } = await exampleWithReference(RETEST);
    const bills = Array.from({ length: 24 }, (_, month) => {
      const date = (day: number) =>
        `${2024 + Math.floor(month / 12)}-${String(1 + (month % 12)).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
      return {
        startDate: date(1),
        endDate: date(28),
        electricityKWh: Math.round(800 + 401 * Math.cos((month * Math.PI) / 6)),
        naturalGasTherms: 12 + month,
        meanOutdoorF: Math.round(58 - 20 * Math.cos((month * Math.PI) / 6)),
      };
    });
    const billed = { ...job, energy: { ...job.energy, bills } };
    const result = await estimate(billed, reference, { draws: 100, seed: 3 });
    const claim = createClaim({
      job: billed,
      reference,
      result,
      claimedBy: "Crew lead B (invented)",
      claimedOn: "2026-11-20",
      measureLifeYears: 18,
      netToGrossRatio: 0.9,
      signer: { privateKey: RFC_8032_SECRET },
    });
    expect(Buffer.byteLength(canonicalJson(claim))).toBeLessThanOrEqual(12_000);
    expect((await recompute(throughJson(claim), false)).outcome).toBe("same");
  });

  it("stays at home with its prices and carries of the organization's repairs those that were done", async () => {
    const { job, reference } = await exampleWithReference(RETEST);
    const priced = {
      ...job,
      priceBook: DEMO_PRICE_BOOK,
      repairs: {
        catalogueId: "own",
        versionId: "3",
        figures: STARTING_CATALOGUE.repairs.map(({ id, labourHours, materials }) => ({
          repairId: id,
          remainingShare: 0.21,
          remainingSpreadShare: 0.11,
          labourHours,
          materials,
        })),
      },
    };
    const result = await estimate(priced, reference, { draws: 100, seed: 3 });
    const claim = createClaim({
      job: priced,
      reference,
      result,
      claimedBy: "Crew lead B (invented)",
      claimedOn: "2026-11-20",
      measureLifeYears: 18,
      netToGrossRatio: 1,
    });
    const done = [...new Set(job.plan!.chosenMeasures!.map(({ repairId }) => repairId))].sort();
    expect(claim.job.priceBook).toBeUndefined();
    expect(claim.job.repairs!.figures.map(({ repairId }) => repairId).sort()).toEqual(done);
    // Of the instruments what the tests were read by, of prices and carbon what this house burns.
    const [fan] = claim.job.instruments!.fans!;
    const read = job.tests.flatMap((test) =>
      "points" in test && test.kind !== "delta-q"
        ? test.points.flatMap(({ restrictorId }) => (restrictorId ? [`${restrictorId} ${test.direction}`] : []))
        : [],
    );
    const kept = fan!.calibrations.map(({ restrictorId, direction }) => `${restrictorId} ${direction}`);
    expect([...kept].sort()).toEqual([...new Set(read)].sort());
    expect(kept.length).toBeLessThan(job.instruments!.fans![0]!.calibrations.length);
    expect(Object.keys(claim.reference.figures).some((key) => /^(propane|fuelOil|naturalGas)/.test(key))).toBe(false);
    expect(Buffer.byteLength(canonicalJson(claim))).toBeLessThanOrEqual(12_000);
    expect((await recompute(throughJson(claim))).outcome).toBe("same");
  });

  it("is signed by Ed25519 with the key of RFC 8032 §7.1 test 1, and a foreign key is caught", async () => {
    const claim = throughJson(await issue(RFC_8032_SECRET));
    expect(claim.signature!.publicKey).toBe(RFC_8032_PUBLIC);
    expect((await recompute(claim, false)).outcome).toBe("same");
    const value = claim.signature!.value;
    claim.signature!.value = (value[0] === "0" ? "1" : "0") + value.slice(1);
    expect((await recompute(claim, false)).outcome).toBe("invalid");
  });

  it("refuses to be made without a retest, and says which test is missing", async () => {
    const { job, reference } = await exampleWithReference("cold-attic-furnace.json");
    const result = await estimate(job, reference);
    expect(() =>
      createClaim({
        job,
        reference,
        result,
        claimedBy: "x",
        claimedOn: "2026-11-20",
        measureLifeYears: 18,
        netToGrossRatio: 1,
      }),
    ).toThrow(InputProblem);
  });

  it("catches a blank at an end, which reading by the schema would take away", async () => {
    const claim = throughJson(await issue());
    expect((await recompute({ ...claim, claimedBy: `${claim.claimedBy} ` }, false)).outcome).toBe("invalid");
  });

  it("catches a change of any field of the packet", async () => {
    const claim = throughJson(await issue());
    const leaves: { holder: Record<string, unknown>; key: string; path: string }[] = [];
    const walk = (value: unknown, path: string): void => {
      if (typeof value !== "object" || value === null) return;
      for (const [key, each] of Object.entries(value)) {
        if (typeof each === "object" && each !== null) walk(each, `${path}/${key}`);
        else leaves.push({ holder: value as Record<string, unknown>, key, path: `${path}/${key}` });
      }
    };
    walk(claim, "");
    expect(leaves.length).toBeGreaterThan(200);
    for (const { holder, key, path } of leaves) {
      const was = holder[key];
      holder[key] = typeof was === "number" ? was + 1 : typeof was === "boolean" ? !was : `${String(was)}x`;
      expect((await recompute(claim, false)).outcome, path).toBe("invalid");
      delete holder[key];
      // Of a list a gap would be left; JSON has none.
      if (!Array.isArray(holder)) expect((await recompute(claim, false)).outcome, `${path} taken out`).toBe("invalid");
      holder[key] = was;
    }
    expect((await recompute(claim, false)).outcome).toBe("same");
  });

  it("catches a digit that is too small to make another number, where the text is at hand", async () => {
    const text = canonicalJson(await issue());
    // Of the longest numerals the last digit often makes no other double.
    const changed = [...text.matchAll(/\d\.\d{15,}/g)].flatMap(({ 0: numeral, index }) =>
      [1, 2, 3, 7, 8, 9].flatMap((step) => {
        const digit = (Number(numeral.at(-1)) + step) % 10;
        const other = `${numeral.slice(0, -1)}${digit}`;
        if (Number(other) !== Number(numeral)) return [];
        return [text.slice(0, index) + other + text.slice(index + numeral.length)];
      }),
    );
    expect(changed.length).toBeGreaterThan(2);
    for (const other of changed) {
      expect(readClaim(JSON.parse(other))).toHaveProperty("claim");
      expect(readClaim(JSON.parse(other), other)).toHaveProperty("errors");
      expect(await recomputeText(other, "a line", () => false)).toMatchObject({ outcome: "invalid" });
    }
    // Written with blanks, or by a program that writes 1e-07 and 15.0, it is the same packet.
    const spaced = JSON.stringify(JSON.parse(text), null, 2).replace(/: 15,/, ": 15.0,");
    expect(readClaim(JSON.parse(spaced), spaced)).toHaveProperty("claim");
  });

  it("says which number differs and by how much when a number was changed and the packet hashed anew", async () => {
    const { hash: _hash, ...body } = throughJson(await issue());
    const saved = body.numbers["savings/electricityKWh"]!;
    saved[0] = saved[0]! * 1.1;
    const outcome = await recompute({ ...body, hash: contentHash(body) });
    expect(outcome.outcome).toBe("differs");
    if (outcome.outcome !== "differs") return;
    expect(outcome.differences.map(({ path, which }) => `${path} ${which}`)).toEqual(["savings/electricityKWh value"]);
    expect(outcome.differences[0]!.relativeDifference).toBeGreaterThan(0.09);
  });

  it("says what changed when another engine or other tables made it", async () => {
    const { hash: _hash, ...body } = throughJson(await issue());
    body.engineVersion = "0.9.0";
    body.reference.figures.electricityUsdPerKWh!.value = 0.99;
    body.reference.hash = "0".repeat(64);
    const outcome = await recompute({ ...body, hash: contentHash(body) }, false);
    expect(outcome.outcome).toBe("same");
    if (outcome.outcome !== "same") return;
    expect(outcome.notes.join("; ")).toMatch(/engine 0\.9\.0.* does not know/);
    expect(outcome.notes.join("; ")).toMatch(/electricityUsdPerKWh 0\.99/);
  });

  it("names what is no claim at all", async () => {
    for (const packet of [null, 1, "x", [], {}, { schemaVersion: "ductmend.claim/1" }]) {
      const outcome = await recompute(packet);
      expect(outcome.outcome).toBe("invalid");
      if (outcome.outcome === "invalid") expect(outcome.errors[0]!.fix.length).toBeGreaterThan(5);
    }
  });
});

describe("canonical form and hash", () => {
  it("orders keys and prints numbers as RFC 8785 §3.2.2 and appendix B show", () => {
    expect(
      canonicalJson({
        b: 1,
        a: [1e21, JSON.parse("333333333.33333329"), 1e-27, "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"/"],
        "": false,
      }),
    ).toBe('{"":false,"a":[1e+21,333333333.3333333,1e-27,"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"],"b":1}');
  });

  it("is SHA-256: the published digest of “abc” (FIPS 180-2 appendix B.1)", async () => {
    const { textHash } = await import("#lib/hash/sha256.ts");
    expect(textHash("abc")).toBe("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  });
});
