import type { Claim } from "#lib/claims/claim-schema.ts";
import type { ProgramRule } from "#lib/claims/program-rule.ts";
import { readClaim } from "#lib/claims/read-claim.ts";
import type { ArrivedClaim } from "#lib/store/repositories/claim-chunks.ts";
import type { ProgramRecord } from "#lib/store/repositories/programs.ts";
import { claimRow } from "./claim-row.ts";
import { completionDate } from "./submit-claim.ts";

/** What one line of a file says: a packet, and where the file names them its contractor and number. */
export interface ArrivingClaim {
  packet: unknown;
  contractorId?: string;
  reference?: string;
  /** The text of the line. */
  asWritten?: string;
}

/** What the lines of one import have in common. */
export interface ImportFrame {
  program: ProgramRecord;
  /** Whose the claims are of which the file does not say it. */
  contractorId?: string;
  contractorIds: ReadonlySet<string>;
  /** The program's rule on a day, YYYY-MM-DD; undefined when it had none. */
  ruleOn(day: string): ProgramRule | undefined;
}

const HASH_DIGITS = 12;

/** A packet that came without a number gets one that follows from its content, so that it is the same each time it comes. */
const ownReference = ({ job, hash }: Claim): string => `${job.id}-${hash.slice(0, HASH_DIGITS)}`;

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** A line is a packet as it was issued, or `{"contractor", "reference", "claim"}` around one. */
export function readArriving(record: unknown): ArrivingClaim | { detail: string } {
  if (!isRecord(record) || !("claim" in record)) return { packet: record };
  const { claim, contractor, reference, ...rest } = record;
  const [unknown] = Object.keys(rest);
  if (unknown !== undefined)
    return { detail: `“${unknown}” is not known beside a claim. Use “contractor”, “reference” and “claim”.` };
  for (const [name, value] of Object.entries({ contractor, reference }))
    if (value !== undefined && (typeof value !== "string" || value.trim() === ""))
      return { detail: `“${name}” is not a text. Write it in quotes, or leave it out.` };
  return { packet: claim, contractorId: contractor as string | undefined, reference: reference as string | undefined };
}

/** An arriving claim as it is stored, or why it is refused: in words for the one who sent it. */
export function acceptClaim(
  { packet, ...named }: ArrivingClaim,
  line: number,
  { program, contractorIds, ruleOn, ...frame }: ImportFrame,
): ArrivedClaim | { detail: string } {
  const contractorId = named.contractorId ?? frame.contractorId;
  if (contractorId === undefined)
    return { detail: "Nothing says whose claim this is. Name the contractor in the line, or for the whole file." };
  if (!contractorIds.has(contractorId))
    return { detail: `The contractor ${contractorId} is not in this program. Invite it first, or correct the id.` };
  const read = readClaim(packet, named.asWritten);
  if ("errors" in read) {
    const [first] = read.errors;
    return { detail: first ? `${first.pointer}: ${first.detail}. ${first.fix}` : "It is not a claim." };
  }
  const { claim, text } = read;
  const reference = named.reference ?? ownReference(claim);
  const target = { programId: program.id, programOrganizationId: program.organizationId, contractorId, reference };
  const day = completionDate(claim.job, claim.claimedOn);
  const rule = ruleOn(day);
  if (!rule) return { detail: `The program had no rule on ${day}, when the work was done.` };
  return { ...claimRow(claim, text, { ...target, rule }), organizationId: contractorId, line };
}
