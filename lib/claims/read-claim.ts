import { ed25519 } from "@noble/curves/ed25519.js";
import { hexToBytes } from "@noble/hashes/utils.js";
import { problemsFromZod } from "#lib/errors/from-zod.ts";
import type { FieldProblem } from "#lib/errors/input-problem.ts";
import { type CanonicalMember, canonicalMembers, joinMembers } from "#lib/hash/canonical-members.ts";
import { textHash } from "#lib/hash/sha256.ts";
import { findJobProblems } from "#lib/job/parse-job.ts";
import { type Claim, claimSchema } from "./claim-schema.ts";
import { strangeNumeral } from "./strange-numeral.ts";

function isSigned({ hash, signature }: Claim): boolean {
  if (!signature) return true;
  try {
    return ed25519.verify(hexToBytes(signature.value), hexToBytes(hash), hexToBytes(signature.publicKey));
  } catch {
    return false;
  }
}

/** What stands beside the body of a claim, and is not hashed. */
const SEALS = new Set(["hash", "signature"]);

/** The first seal that does not hold: hash byte for byte, the job's own hash, the signature. */
function brokenSeal(claim: Claim, asIssued: readonly CanonicalMember[]): FieldProblem | null {
  const broken = (pointer: string, detail: string, fix: string) => ({ pointer, detail, code: "claim-invalid", fix });
  if (textHash(joinMembers(asIssued.filter(([name]) => !SEALS.has(name)))) !== claim.hash)
    return broken(
      "#/hash",
      "The hash does not belong to this content",
      "Ask for the packet as it was issued: something in it was changed.",
    );
  if (textHash(asIssued.find(([name]) => name === "job")?.[1] ?? "") !== claim.jobHash)
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
 * as it came: what reading by the schema would smooth, a blank at an end, say, is a change too. Beside the claim stands its
 * canonical text, byte for byte what was issued. `asWritten` is the text that the packet was read from, where it is at
 * hand: then a digit is caught, too, that is too small to make another number.
 */
export function readClaim(
  packet: unknown,
  asWritten?: string,
): { claim: Claim; text: string } | { errors: FieldProblem[] } {
  const parsed = claimSchema.safeParse(packet);
  if (!parsed.success) return { errors: problemsFromZod({ error: parsed.error, schema: claimSchema, input: packet }) };
  const claim = parsed.data;
  const members = canonicalMembers(packet as Claim);
  const seal = brokenSeal(claim, members);
  if (seal) return { errors: [seal] };
  const problems = findJobProblems(claim.job);
  if (problems.length > 0)
    return { errors: problems.map((each) => ({ ...each, pointer: `#/job${each.pointer.slice(1)}` })) };
  const text = joinMembers(members);
  const strange = asWritten === undefined || asWritten === text ? undefined : strangeNumeral(asWritten);
  if (strange !== undefined)
    return {
      errors: [
        {
          pointer: "#/hash",
          detail: `The number ${strange} was not issued so`,
          code: "claim-invalid",
          fix: "Ask for the packet as it was issued: something in it was changed.",
        },
      ],
    };
  return { claim, text };
}
