import type { Metadata } from "next";
import Link from "next/link";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { Notice } from "#app/design/notice.tsx";
import { StatGrid } from "#app/design/stat-block.tsx";
import { showAs } from "#app/jobs/session.ts";
import { claimFigures, claimRebate } from "#lib/claims/claim-figures.ts";
import { type Claim, claimSchema } from "#lib/claims/claim-schema.ts";
import { programRuleSchema } from "#lib/claims/program-rule.ts";
import { recomputeClaim } from "#lib/claims/recompute-claim.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { formatNumber, formatUsdCents } from "#lib/units/format.ts";
import { sideOf } from "#lib/work/claims/decide-claim.ts";
import { CLAIM_STATE_WORDS, day } from "../../claim-words.ts";
import styles from "../../program.module.css";
import { ClaimFlags } from "./claim-flags.tsx";
import { ClaimInspections } from "./claim-inspections.tsx";
import { ClaimOriginPart } from "./claim-origin.tsx";
import { ClaimPacket } from "./claim-packet.tsx";
import { ClaimSteps } from "./claim-steps.tsx";
import { ClaimTalk } from "./claim-talk.tsx";
import { RecomputeHere } from "./recompute-here.tsx";
import { RecomputeVerdict } from "./recompute-verdict.tsx";

export const metadata: Metadata = { title: "Claim" };

const PROBLEMS: Readonly<Record<string, string>> = {
  "no-words": "Enter a few words first: every decision and every comment stays with the claim.",
  "moved-on": "The claim has moved on since you loaded it. Here it is as it stands now.",
  "no-reading": "Enter the leakage that was read and its uncertainty as numbers above zero.",
};

function readPacket(packet: string): Claim | null {
  const parsed = claimSchema.safeParse(JSON.parse(packet));
  return parsed.success ? parsed.data : null;
}

/** One claim as both sides see it: what is claimed, whether it recomputes, what to ask about, what was said and decided. */
export default async function ClaimPage({
  params,
  searchParams,
}: {
  params: Promise<{ id: string }>;
  searchParams: Promise<{ problem?: string }>;
}) {
  const [{ id }, { problem }] = [await params, await searchParams];
  const { actor, stored, review, names, rule, isDemo } = await showAs("claim.view", async (scope, member) => {
    const claim = await scope.claims.find(id);
    const own = await scope.organizations.own();
    const organizations = [own, ...(await scope.organizations.partners())];
    const members = await scope.organizations.members();
    const { document } = await scope.programs.ruleOn(claim.programId, claim.completedOn);
    return {
      actor: member,
      isDemo: own.isDemo,
      stored: claim,
      rule: programRuleSchema.parse(document),
      names: new Map([...organizations, ...members].map((each) => [each.id, each.name])),
      review: {
        flags: await scope.claimReview.flags(id),
        events: await scope.claimReview.events(id),
        inspections: await scope.claimReview.inspections(id),
        log: await scope.audit.list({ subjectKind: "claim", subjectId: id }),
      },
    };
  });
  const side = sideOf(actor, stored);
  const claim = readPacket(stored.packet);
  // The values alone, at once; the stored outcome is that of all draws.
  const outcome = await recomputeClaim(JSON.parse(stored.packet), {
    loadReference: loadReferenceData,
    withDraws: false,
  });
  const figures = claim && claimFigures(claim);
  const unmet = figures ? claimRebate(figures, rule).unmet : [];
  const contractor = names.get(stored.organizationId) ?? "A contractor";
  return (
    <>
      {isDemo ? <DemoBanner>The contractor, the program and this claim are made up.</DemoBanner> : null}
      <div className={styles.page}>
        <p className={styles.over}>
          <Link href="/program">Claims</Link> · {contractor} · work done on {day(stored.completedOn)}
        </p>
        <header className={styles.head}>
          <h1>Claim {stored.reference}</h1>
          <span className={styles.state}>{CLAIM_STATE_WORDS[stored.state]}</span>
        </header>
        {problem && PROBLEMS[problem] ? <Notice kind="problem" title={PROBLEMS[problem]} isLive /> : null}
        <div className={styles.columns}>
          <div>
            {figures ? (
              <StatGrid
                stats={[
                  {
                    id: "leakage",
                    label: "Total leakage at 25 Pa",
                    value: `${formatNumber(figures.beforeTotalCfm25)} → ${formatNumber(figures.afterTotalCfm25)}`,
                    unit: "cfm",
                  },
                  {
                    id: "outside",
                    label: "To outside",
                    value: `${formatNumber(figures.beforeToOutsideCfm25)} → ${formatNumber(figures.afterToOutsideCfm25)}`,
                    unit: "cfm",
                  },
                  { id: "kwh", label: "Saved a year", value: formatNumber(figures.savedElectricityKWh), unit: "kWh" },
                  {
                    id: "rebate",
                    label: `Rebate by “${rule.rebate.title}”`,
                    value: formatUsdCents(stored.rebateUsdCents),
                    doubt: unmet.join(". "),
                  },
                ]}
              />
            ) : null}
            {claim?.origin ? <ClaimOriginPart origin={claim.origin} numbers={claim.numbers} /> : null}
            <section aria-labelledby="recomputed">
              <h2 id="recomputed">Recomputed</h2>
              <RecomputeVerdict claim={stored} outcome={outcome} hasReadings={!claim?.origin} />
              {claim ? <RecomputeHere claimId={id} draws={claim.draws} /> : null}
            </section>
            <section aria-labelledby="flags">
              <h2 id="flags">What to ask about</h2>
              <ClaimFlags flags={review.flags} />
            </section>
            {claim ? (
              <section aria-labelledby="inspection">
                <h2 id="inspection">At the house</h2>
                <ClaimInspections
                  claimId={id}
                  inspections={review.inspections}
                  names={names}
                  mayRecord={side === "program"}
                />
              </section>
            ) : null}
            <section aria-labelledby="packet">
              <h2 id="packet">The packet</h2>
              {claim ? <ClaimPacket claim={claim} claimId={id} packetHash={stored.packetHash} /> : null}
            </section>
          </div>
          <aside className={styles.side} aria-labelledby="talk">
            <h2 id="talk">Said and decided</h2>
            <ClaimTalk
              events={review.events}
              log={review.log}
              names={names}
              otherSide={side === "program" ? contractor : "The program"}
            />
            <ClaimSteps key={`${stored.state} ${review.events.length}`} claim={stored} side={side} role={actor.role} />
          </aside>
        </div>
      </div>
    </>
  );
}
