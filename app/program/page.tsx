import type { Metadata } from "next";
import Link from "next/link";
import { LinkButton } from "#app/design/button.tsx";
import { DataTable } from "#app/design/data-table.tsx";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { EmptyState } from "#app/design/empty-state.tsx";
import { showAs } from "#app/jobs/session.ts";
import { can } from "#lib/access/can.ts";
import type { ClaimSummary } from "#lib/store/repositories/claims.ts";
import { formatNumber, formatUsdCents } from "#lib/units/format.ts";
import { unseenRules } from "#lib/work/claims/rule-notices.ts";
import { ClaimFilters, type ClaimSearch, filterOf } from "./claim-filters.tsx";
import { CLAIM_STATE_WORDS, day, OUTCOME_WORDS } from "./claim-words.ts";
import { ClaimsSummary } from "./claims-summary.tsx";
import styles from "./program.module.css";
import { RuleNotices } from "./rule-notices.tsx";
import { TableOfClaims } from "./table-of-claims.tsx";

export const metadata: Metadata = { title: "Claims" };

const COLUMNS = [
  { label: "Claim" },
  { label: "Contractor" },
  { label: "Work done on" },
  { label: "To outside, cfm at 25 Pa", isNumeric: true },
  { label: "Saved, kWh a year", isNumeric: true },
  { label: "Rebate", isNumeric: true },
  { label: "Recomputed" },
  { label: "To ask about", isNumeric: true },
  { label: "State" },
];

function rowOf(claim: ClaimSummary, names: ReadonlyMap<string, string>) {
  return {
    id: claim.id,
    cells: [
      <Link key="link" href={`/program/claims/${claim.id}`}>
        {claim.reference}
      </Link>,
      names.get(claim.organizationId) ?? "Another contractor",
      day(claim.completedOn),
      `${formatNumber(claim.beforeToOutsideCfm25)} → ${formatNumber(claim.afterToOutsideCfm25)}`,
      formatNumber(claim.savedElectricityKWh),
      formatUsdCents(claim.rebateUsdCents),
      OUTCOME_WORDS[claim.recomputeOutcome ?? "not-yet"],
      claim.flagCount === 0 ? "nothing" : String(claim.flagCount),
      <span key="state" className={styles.state}>
        {CLAIM_STATE_WORDS[claim.state]}
      </span>,
    ],
  };
}

/** All claims that this organization made or receives: how they stand, which deserve a question, and the way into each. */
export default async function ClaimsPage({ searchParams }: { searchParams: Promise<ClaimSearch> }) {
  const search = await searchParams;
  const { actor, page, summary, names, notices, isDemo } = await showAs("claim.view", async (scope, member) => {
    const own = await scope.organizations.own();
    const organizations = [own, ...(await scope.organizations.partners())];
    return {
      actor: member,
      isDemo: own.isDemo,
      page: await scope.claims.list({ ...filterOf(search), limit: 50 }),
      summary: await scope.claims.summary(),
      names: new Map(organizations.map(({ id, name }) => [id, name])),
      notices: can(member, "claim.submit") ? await unseenRules(scope) : [],
    };
  });
  const isProgram = actor.organizationKind === "program";
  const total = summary.state.reduce((sum, { claims }) => sum + claims, 0);
  return (
    <>
      {isDemo ? <DemoBanner>The organizations, the program and its claims are made up.</DemoBanner> : null}
      <div className={styles.page}>
        <header className={styles.head}>
          <div>
            <p className={styles.over}>{actor.organizationName}</p>
            <h1>{isProgram ? "Claims received" : "Claims handed in"}</h1>
          </div>
          <div className={styles.actions}>
            {isProgram ? (
              <>
                <LinkButton href="/program/inspections" variant="secondary">
                  Draw an inspection sample
                </LinkButton>
                <LinkButton href="/program/import" variant="secondary">
                  Claims by file
                </LinkButton>
                <LinkButton href="/program/rules" variant="secondary">
                  Try another rule
                </LinkButton>
              </>
            ) : null}
            <LinkButton href="/api" variant="quiet">
              Programming interface
            </LinkButton>
            <LinkButton href="/who" variant="quiet">
              Act as somebody else
            </LinkButton>
          </div>
        </header>
        <RuleNotices notices={notices} />
        {total === 0 ? (
          <EmptyState title="No claims yet" action={<LinkButton href="/jobs">Go to the jobs</LinkButton>}>
            A claim is made from the result of a job that has a retest. It carries everything needed to recompute it.
          </EmptyState>
        ) : (
          <>
            <ClaimsSummary summary={summary} names={names} isProgram={isProgram} />
            <ClaimFilters search={search} contractors={isProgram ? names : new Map()} ownId={actor.organizationId} />
            {page.items.length === 0 ? (
              <EmptyState title="No claim fits" action={<LinkButton href="/program">Show all claims</LinkButton>}>
                Choose fewer conditions, or search for the start of the claim’s number.
              </EmptyState>
            ) : (
              <DataTable
                caption="Claims, the newest first"
                isCardsWhenNarrow
                columns={COLUMNS}
                rows={page.items.map((claim) => rowOf(claim, names))}
              />
            )}
            {page.nextCursor ? (
              <LinkButton
                variant="secondary"
                href={`/program?${new URLSearchParams({ ...search, after: page.nextCursor })}`}
              >
                Older claims
              </LinkButton>
            ) : null}
            <TableOfClaims search={search} />
          </>
        )}
      </div>
    </>
  );
}
