import { ed25519 } from "@noble/curves/ed25519.js";
import { hexToBytes } from "@noble/hashes/utils.js";
import { problemsFromZod } from "#lib/errors/from-zod.ts";
import type { FieldProblem } from "#lib/errors/input-problem.ts";
import { contentHash } from "#lib/hash/content-hash.ts";
import { findJobProblems } from "#lib/job/parse-job.ts";
import { type Claim, claimSchema } from "./claim-schema.ts";
import { claimBody } from "./create-claim.ts";

function isSigned({ hash, signature }: Claim): boolean {
  if (!signature) return true;
  try {
    return ed25519.verify(hexToBytes(signature.value), hexToBytes(hash), hexToBytes(signature.publicKey));
  } catch {
    return false;
  }
}

/** The first seal that does not hold: hash byte for byte, the job's own hash, the signature. */
function brokenSeal(claim: Claim, asIssued: Claim): FieldProblem | null {
  const broken = (pointer: string, detail: string, fix: string) => ({ pointer, detail, code: "claim-invalid", fix });
  if (contentHash(claimBody(asIssued)) !== claim.hash)
    return broken(
      "#/hash",
      "The hash does not belong to this content",
      "Ask for the packet as it was issued: something in it was changed.",
    );
  if (contentHash(asIssued.job) !== claim.jobHash)
    return broken("#/jobHash", "The job's hash does not belong to this job", "Ask for the packet as it was issued.");
  if (!isSigned(claim))
    return broken(
      "#/signature",
      "The signature does not belong to this hash and key",
      "Ask the organization to sign the packet again.",
    );
  return null;
}

/**
 * Reads a claim packet: schema, hashes and signature, links within its job. What is wrong comes back as data. It is hashed
 * as it came: what reading by the schema would smooth, a blank at an end, say, is a change too.
 */
export function readClaim(packet: unknown): { claim: Claim } | { errors: FieldProblem[] } {
  const parsed = claimSchema.safeParse(packet);
  if (!parsed.success) return { errors: problemsFromZod({ error: parsed.error, schema: claimSchema, input: packet }) };
  const claim = parsed.data;
  const seal = brokenSeal(claim, packet as Claim);
  if (seal) return { errors: [seal] };
  const problems = findJobProblems(claim.job);
  if (problems.length > 0)
    return { errors: problems.map((each) => ({ ...each, pointer: `#/job${each.pointer.slice(1)}` })) };
  return { claim };
}
