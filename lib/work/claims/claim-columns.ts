import type { MemberActor } from "#lib/access/actor.ts";
import { requireAllowed } from "#lib/access/can.ts";
import { csvLine } from "#lib/exchange/csv/write-cells.ts";
import type { Store } from "#lib/store/open-store.ts";
import type { ClaimFilter, ClaimSummary } from "#lib/store/repositories/claims.ts";

const CENTS_PER_DOLLAR = 100;
const day = (date: Date): string => date.toISOString().slice(0, "YYYY-MM-DD".length);

interface Column {
  name: string;
  /** What it holds, for whoever reads the table. */
  means: string;
  of: (claim: ClaimSummary, names: ReadonlyMap<string, string>) => string | number | null;
}

/** The claims of a list as a flat table: one claim a line, one fact a column, units in the names. */
export const CLAIM_COLUMNS: readonly Column[] = [
  { name: "claim", means: "The claim's own number at its contractor", of: ({ reference }) => reference },
  { name: "claimId", means: "Its id here", of: ({ id }) => id },
  { name: "contractor", means: "Who made it", of: ({ organizationId }, names) => names.get(organizationId) ?? "" },
  { name: "contractorId", means: "The contractor's id", of: ({ organizationId }) => organizationId },
  { name: "programId", means: "The program's id", of: ({ programId }) => programId },
  { name: "state", means: "Where it stands", of: ({ state }) => state },
  { name: "workDoneOn", means: "Day of the last test after the work", of: ({ completedOn }) => day(completedOn) },
  { name: "handedInAt", means: "When it came in, UTC", of: ({ submittedAt }) => submittedAt.toISOString() },
  {
    name: "beforeToOutsideCfm25",
    means: "Leakage to outside before, cfm at 25 Pa, as claimed",
    of: ({ beforeToOutsideCfm25 }) => beforeToOutsideCfm25,
  },
  {
    name: "afterToOutsideCfm25",
    means: "The same after the work",
    of: ({ afterToOutsideCfm25 }) => afterToOutsideCfm25,
  },
  {
    name: "savedElectricityKWh",
    means: "Electricity saved a year, as claimed",
    of: ({ savedElectricityKWh }) => savedElectricityKWh,
  },
  {
    name: "savedNaturalGasTherms",
    means: "Gas saved a year, as claimed",
    of: ({ savedNaturalGasTherms }) => savedNaturalGasTherms,
  },
  {
    name: "rebateUsd",
    means: "Rebate by the rule of that day, in dollars",
    of: ({ rebateUsdCents }) => rebateUsdCents / CENTS_PER_DOLLAR,
  },
  {
    name: "recomputed",
    means: "What recomputing said: same, differs, invalid or not-yet",
    of: ({ recomputeOutcome }) => recomputeOutcome ?? "not-yet",
  },
  {
    name: "recomputedAt",
    means: "When, UTC",
    of: ({ recomputedAt }) => recomputedAt?.toISOString() ?? null,
  },
  { name: "engineVersion", means: "Engine that issued it", of: ({ engineVersion }) => engineVersion },
  {
    name: "recomputedEngineVersion",
    means: "Engine that recomputed it",
    of: ({ recomputedEngineVersion }) => recomputedEngineVersion,
  },
  { name: "flagCount", means: "How many things there are to ask about", of: ({ flagCount }) => flagCount },
  { name: "premiseKey", means: "The same for claims of one address", of: ({ premiseKey }) => premiseKey },
  { name: "packetSha256", means: "SHA-256 of the packet", of: ({ packetHash }) => packetHash },
];

const PAGE = 500;

/**
 * The claims that a filter leaves, as lines of a table, page by page in constant memory.
 * @throws InputProblem when the actor may not see claims.
 */
export async function* claimTable(
  store: Store,
  actor: MemberActor,
  filter: Omit<ClaimFilter, "cursor" | "limit">,
): AsyncGenerator<string> {
  requireAllowed(actor, "claim.view");
  yield csvLine(CLAIM_COLUMNS.map(({ name }) => name));
  const names = await store.withOrganization(actor, async ({ organizations }) => {
    const all = [await organizations.own(), ...(await organizations.partners())];
    return new Map(all.map(({ id, name }) => [id, name]));
  });
  let cursor: string | undefined;
  do {
    const page = await store.withOrganization(actor, ({ claims }) => claims.list({ ...filter, cursor, limit: PAGE }));
    yield page.items.map((claim) => csvLine(CLAIM_COLUMNS.map(({ of }) => of(claim, names)))).join("");
    cursor = page.nextCursor;
  } while (cursor !== undefined);
}
