import { ed25519 } from "@noble/curves/ed25519.js";
import { bytesToHex, hexToBytes } from "@noble/hashes/utils.js";
import { InputProblem } from "#lib/errors/input-problem.ts";
import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import { canonicalJson, contentHash } from "#lib/hash/content-hash.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { CLAIM_SCHEMA_VERSION, type Claim, type ClaimBody, type ClaimOrigin } from "./claim-schema.ts";
import { claimedJob } from "./claimed-job.ts";
import { claimedNumbers } from "./claimed-numbers.ts";

/** A claim's size: 12 KB, 200 B for each leak beyond twelve, and what the job's own weather takes. */
const MOST_BYTES = 12_000;
const BYTES_PER_FURTHER_SITE = 200;
const SITES_INCLUDED = 12;

export interface ClaimSigner {
  /** 32 bytes of the organization's private key, hexadecimal. */
  privateKey: string;
}

export interface ClaimRequest {
  job: Job;
  reference: ReferenceData;
  result: Result;
  claimedBy: string;
  /** YYYY-MM-DD. */
  claimedOn: string;
  /** As the program's rule has them; used only beside a deemed rule. */
  measureLifeYears: number;
  netToGrossRatio: number;
  signer?: ClaimSigner;
  /** When the entries came in a file of an open standard. */
  origin?: ClaimOrigin;
}

/** Electricity is always used: by the blower. */
const OTHER_FUELS = ["naturalGas", "propane", "fuelOil"] as const;

/** Prices and carbon of the fuels that a claimed number is about. */
function figuresUsed({ prices, carbon }: ReferenceData, paths: readonly string[]): ClaimBody["reference"]["figures"] {
  const unused = OTHER_FUELS.filter((fuel) => !paths.some((path) => path.includes(fuel)));
  return Object.fromEntries(
    [...Object.entries(prices), ...Object.entries(carbon)]
      .filter(([key]) => !unused.some((fuel) => key.startsWith(fuel)))
      .map(([key, { value, source }]) => [key, { value, source }]),
  );
}

/** What was assumed is told to nine digits: it is read by people, and a recomputation assumes it anew. */
const shortened = <Value>(value: Value): Value | number =>
  typeof value === "number" ? Number(value.toPrecision(9)) : value;

/** Everything that is hashed: without hash and signature. */
export function claimBody(claim: Claim): ClaimBody {
  const { hash: _hash, signature: _signature, ...body } = claim;
  return body;
}

/**
 * The claim packet of a job: inputs, readings as taken, instruments, reference data by hash, numbers, versions, seed,
 * assumptions, deemed figures, who and when. RFC 8785 canonical form, SHA-256, optional Ed25519 signature (RFC 8032).
 * @throws InputProblem when there is no retest to claim from, or the packet would be too large.
 */
export function createClaim({
  job,
  reference,
  result,
  claimedBy,
  claimedOn,
  measureLifeYears,
  netToGrossRatio,
  signer,
  origin,
}: ClaimRequest): Claim {
  if (result.basis !== "verified") {
    throw new InputProblem("input-unusable", [
      {
        pointer: "#/tests",
        detail: "There is no retest yet, so nothing is verified",
        code: "retest-missing",
        fix: "Add the test made after the work, with its stage “retest” or “final”.",
      },
    ]);
  }
  const numbers = claimedNumbers(result);
  const figures = figuresUsed(reference, Object.keys(numbers));
  const { deemed } = result;
  const claimed = claimedJob(job);
  const body: ClaimBody = {
    schemaVersion: CLAIM_SCHEMA_VERSION,
    engineVersion: result.engineVersion,
    job: claimed,
    jobHash: contentHash(claimed),
    reference: { hash: reference.hash, stationId: reference.station.id, placeTitle: reference.place.title, figures },
    draws: result.draws,
    seed: result.seed,
    basis: result.basis,
    numbers,
    assumptions: result.assumptions.map(({ path, value }) => [path, shortened(value)]),
    deemed: deemed && {
      ruleId: deemed.ruleId,
      edition: deemed.edition,
      coolingKWh: deemed.coolingKWh,
      heatingTherms: deemed.heatingTherms,
      blowerKWh: deemed.blowerKWh,
      ...(deemed.heatingKWh > 0 && { heatingKWh: deemed.heatingKWh }),
      measureLifeYears,
      netToGrossRatio,
    },
    claimedBy,
    claimedOn,
    ...(origin && { origin }),
  };
  const hash = contentHash(body);
  const claim: Claim = { ...body, hash, ...(signer ? { signature: signHash(hash, signer) } : {}) };
  const sizeOf = (part: unknown) => new TextEncoder().encode(canonicalJson(part)).length;
  const weatherBytes = job.house.weatherYear ? sizeOf(job.house.weatherYear) : 0;
  const limit = MOST_BYTES + BYTES_PER_FURTHER_SITE * Math.max(0, job.sites.length - SITES_INCLUDED) + weatherBytes;
  const bytes = sizeOf(claim);
  if (bytes > limit) {
    throw new InputProblem("input-unusable", [
      {
        pointer: "#/job",
        detail: `The packet would be ${bytes} bytes, more than the ${limit} allowed`,
        code: "claim-too-large",
        fix: "Shorten the notes of the job, or remove price-book rows that are not used.",
      },
    ]);
  }
  return claim;
}

function signHash(hash: string, { privateKey }: ClaimSigner): NonNullable<Claim["signature"]> {
  const secret = hexToBytes(privateKey);
  return {
    publicKey: bytesToHex(ed25519.getPublicKey(secret)),
    value: bytesToHex(ed25519.sign(hexToBytes(hash), secret)),
  };
}
