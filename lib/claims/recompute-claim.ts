import { type FieldProblem, InputProblem } from "#lib/errors/input-problem.ts";
import { changesSince } from "#lib/estimate/engine-history.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { estimateClaimedFigures } from "#lib/estimate/estimate-claimed-figures.ts";
import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { Claim } from "./claim-schema.ts";
import { claimedNumbers } from "./claimed-numbers.ts";
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

export type RecomputeOutcome =
  | { outcome: "same"; hash: string; notes: string[] }
  | { outcome: "differs"; hash: string; differences: NumberDifference[]; notes: string[] }
  | { outcome: "invalid"; errors: FieldProblem[] };

export interface RecomputeOptions {
  loadReference: (job: Job) => Promise<ReferenceData>;
  /** False: only the values are compared, and the outcome says so. */
  withDraws: boolean;
}

const WHICH = ["value", "p10", "p90"] as const;

function relativeDifferenceOf(was: number, is: number): number {
  const scale = Math.max(Math.abs(was), Math.abs(is));
  return scale > 0 ? Math.abs(was - is) / scale : 0;
}

function isSameNumber(was: number | undefined, is: number | undefined): boolean {
  if (was === undefined || is === undefined) return was === is;
  return relativeDifferenceOf(was, is) <= RECOMPUTE_TOLERANCE_RATIO;
}

function compareNumbers(
  claimed: Claim["numbers"],
  recomputed: Record<string, number[]>,
  withDraws: boolean,
): NumberDifference[] {
  const whiches = withDraws ? WHICH : WHICH.slice(0, 1);
  const onlyRecomputed = Object.keys(recomputed).filter((path) => !Object.hasOwn(claimed, path));
  return [...Object.keys(claimed), ...onlyRecomputed]
    .filter((path) => whiches.some((_, index) => !isSameNumber(claimed[path]?.[index], recomputed[path]?.[index])))
    .sort()
    .flatMap((path) =>
      whiches.flatMap((which, index): NumberDifference[] => {
        const was = claimed[path]?.[index];
        const is = recomputed[path]?.[index];
        if (isSameNumber(was, is)) return [];
        const relativeDifference = was === undefined || is === undefined ? 1 : relativeDifferenceOf(was, is);
        return [{ path, which, claimed: was ?? null, recomputed: is ?? null, relativeDifference }];
      }),
    );
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
      return was === figure.value ? [] : [`${key} ${was} → ${figure.value}`];
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
  { loadReference, withDraws }: RecomputeOptions,
): Promise<RecomputeOutcome> {
  const read = readClaim(packet);
  if ("errors" in read) return { outcome: "invalid", errors: read.errors };
  const { claim } = read;
  try {
    const reference = await loadReference(claim.job);
    const draws = withDraws ? claim.draws : 0;
    const figures = estimateClaimedFigures(claim.job, reference, { draws, seed: claim.seed });
    const notes = notesOf(claim, reference, withDraws);
    const differences = compareNumbers(claim.numbers, claimedNumbers(figures), withDraws && claim.draws > 0);
    return differences.length === 0
      ? { outcome: "same", hash: claim.hash, notes }
      : { outcome: "differs", hash: claim.hash, differences, notes };
  } catch (thrown) {
    if (!(thrown instanceof InputProblem)) throw thrown;
    return {
      outcome: "invalid",
      errors: thrown.errors.map((each) => ({ ...each, pointer: `#/job${each.pointer.slice(1)}` })),
    };
  }
}
