import { type FieldProblem, InputProblem } from "#lib/errors/input-problem.ts";
import { changesSince } from "#lib/estimate/engine-history.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { estimateClaimedFigures } from "#lib/estimate/estimate-claimed-figures.ts";
import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { Claim } from "./claim-schema.ts";
import { claimedNumbers } from "./claimed-numbers.ts";
import { explainDifferences } from "./explain-differences.ts";
import { readClaim } from "./read-claim.ts";

/** Numbers of a claim and of its recomputation agree when they are this close. */
export const RECOMPUTE_TOLERANCE_RATIO = 1e-9;

/** One number that does not come out the same. */
export interface NumberDifference {
  path: string;
  which: "value" | "p10" | "p90";
  claimed: number | null;
  recomputed: number | null;
  relativeDifference: number;
}

interface Recomputed {
  /** The claim's own. */
  hash: string;
  /**
   * The most that any number is apart from its claimed one: 0 when all are the same to the last bit. The language leaves
   * the last bit of powers and exponentials to its engine, so another make of browser gets some 1e-15.
   */
  largestRelativeDifference: number;
  notes: string[];
}

export type RecomputeOutcome =
  | ({ outcome: "same" } & Recomputed)
  | ({ outcome: "differs"; differences: NumberDifference[] } & Recomputed)
  | { outcome: "invalid"; errors: FieldProblem[] };

export interface RecomputeOptions {
  loadReference: (job: Job) => Promise<ReferenceData>;
  /** False: only the values are compared, and the outcome says so. */
  withDraws: boolean;
  /** The text that the packet was read from, where it is at hand. */
  asWritten?: string;
}

const WHICH = ["value", "p10", "p90"] as const;

function relativeDifferenceOf(was: number, is: number): number {
  const scale = Math.max(Math.abs(was), Math.abs(is));
  return scale > 0 ? Math.abs(was - is) / scale : 0;
}

function relativeDifferenceBetween(was: number | undefined, is: number | undefined): number {
  if (was === undefined || is === undefined) return was === is ? 0 : 1;
  return relativeDifferenceOf(was, is);
}

function compareNumbers(
  claimed: Claim["numbers"],
  recomputed: Record<string, number[]>,
  withDraws: boolean,
): { differences: NumberDifference[]; largestRelativeDifference: number } {
  const whiches = withDraws ? WHICH : WHICH.slice(0, 1);
  const onlyRecomputed = Object.keys(recomputed).filter((path) => !Object.hasOwn(claimed, path));
  const differences: NumberDifference[] = [];
  let largestRelativeDifference = 0;
  for (const path of [...Object.keys(claimed), ...onlyRecomputed].sort())
    for (const [index, which] of whiches.entries()) {
      const was = claimed[path]?.[index];
      const is = recomputed[path]?.[index];
      const relativeDifference = relativeDifferenceBetween(was, is);
      largestRelativeDifference = Math.max(largestRelativeDifference, relativeDifference);
      if (!(relativeDifference <= RECOMPUTE_TOLERANCE_RATIO))
        differences.push({ path, which, claimed: was ?? null, recomputed: is ?? null, relativeDifference });
    }
  return { differences, largestRelativeDifference };
}

function whatChanged({ engineVersion }: Claim): string {
  const changes = changesSince(engineVersion);
  if (changes === null) return "a version that this one does not know";
  return changes
    .map(({ version, what, touches }) => `${version} (${touches.join(", ") || "no figure of a claim"}): ${what}`)
    .join(" ");
}

/** What another version or other tables may have changed; said before numbers are compared. */
function notesOf(claim: Claim, reference: ReferenceData, withDraws: boolean): string[] {
  const notes: string[] = [];
  if (claim.engineVersion !== ENGINE_VERSION)
    notes.push(
      `issued by engine ${claim.engineVersion}, recomputed by engine ${ENGINE_VERSION}: ${whatChanged(claim)}`,
    );
  if (claim.reference.hash !== reference.hash) {
    const changed = Object.entries({ ...reference.prices, ...reference.carbon }).flatMap(([key, figure]) => {
      const was = claim.reference.figures[key]?.value;
      // A fuel that the house does not use has no figure in the packet.
      return was === undefined || was === figure.value ? [] : [`${key} ${was} → ${figure.value}`];
    });
    notes.push(
      `reference data changed since: ${changed.length > 0 ? changed.join(", ") : `weather or place of station ${reference.station.id}`}`,
    );
  }
  if (claim.draws > 0 && !withDraws) notes.push("ranges not recomputed");
  return notes;
}

/**
 * Recomputes a claim from its own inputs: same, differs (which number, by how much) or invalid (where).
 * Hash first, byte for byte; then the signature; then every number at 1e-9 relative. Pure but for the loader handed in.
 */
export async function recomputeClaim(
  packet: unknown,
  { loadReference, withDraws, asWritten }: RecomputeOptions,
): Promise<RecomputeOutcome> {
  const read = readClaim(packet, asWritten);
  if ("errors" in read) return { outcome: "invalid", errors: read.errors };
  const { claim } = read;
  try {
    const reference = await loadReference(claim.job);
    const draws = withDraws ? claim.draws : 0;
    const figures = estimateClaimedFigures(claim.job, reference, { draws, seed: claim.seed });
    const { differences, largestRelativeDifference } = compareNumbers(
      claim.numbers,
      claimedNumbers(figures),
      withDraws && claim.draws > 0,
    );
    const changes = claim.engineVersion === ENGINE_VERSION ? null : changesSince(claim.engineVersion);
    const notes = [
      ...notesOf(claim, reference, withDraws),
      ...(changes ? explainDifferences(differences, changes) : []),
    ];
    const recomputed = { hash: claim.hash, largestRelativeDifference, notes };
    return differences.length === 0
      ? { outcome: "same", ...recomputed }
      : { outcome: "differs", differences, ...recomputed };
  } catch (thrown) {
    if (!(thrown instanceof InputProblem)) throw thrown;
    return {
      outcome: "invalid",
      errors: thrown.errors.map((each) => ({ ...each, pointer: `#/job${each.pointer.slice(1)}` })),
    };
  }
}
