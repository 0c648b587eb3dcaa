import type { MemberActor } from "#lib/access/actor.ts";
import { requireAllowed } from "#lib/access/can.ts";
import type { Claim } from "#lib/claims/claim-schema.ts";
import { isStillStanding } from "#lib/claims/claim-state.ts";
import { deemedUnderRules } from "#lib/claims/deemed-under-rule.ts";
import { type ProgramRule, programRuleSchema } from "#lib/claims/program-rule.ts";
import { type ClaimUnderRule, type RuleTouch, replayRule } from "#lib/claims/replay-rule.ts";
import { estimateTotal, type SampleSums } from "#lib/claims/sampling/estimate-total.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import type { Store } from "#lib/store/open-store.ts";

export interface TouchedClaim extends RuleTouch {
  id: string;
  reference: string;
  contractorId: string;
}

/** A total over all standing claims: itself when all were gone through, else an estimate with its range. */
export interface ReplayTotal {
  total: number;
  low: number;
  high: number;
}

export interface RuleReplay {
  replayedCount: number;
  /** All that stand. */
  standingCount: number;
  touched: ReplayTotal;
  rebatesBeforeUsdCents: ReplayTotal;
  rebatesAfterUsdCents: ReplayTotal;
  /** After − before, which a sample knows better than either. */
  changeUsdCents: ReplayTotal;
  lifetimeElectricityKWh: { before: ReplayTotal; after: ReplayTotal };
  lifetimeNaturalGasTherms: { before: ReplayTotal; after: ReplayTotal };
  /** Credited a year by the deemed rules, cooling and blower together. */
  deemedElectricityKWh: { before: ReplayTotal; after: ReplayTotal };
  deemedNaturalGasTherms: { before: ReplayTotal; after: ReplayTotal };
  /** The first of those gone through. */
  examples: readonly TouchedClaim[];
}

const PAGE = 250;
const MOST_SHOWN = 20;

const deemedKWh = ({ deemed }: ClaimUnderRule): number => (deemed ? deemed.coolingKWh + deemed.blowerKWh : 0);

/** What is summed up of each claim. */
const FIGURES = {
  touched: ({ isTouched }: RuleTouch) => Number(isTouched),
  rebatesBefore: ({ before }: RuleTouch) => before.rebateUsdCents,
  rebatesAfter: ({ after }: RuleTouch) => after.rebateUsdCents,
  change: ({ before, after }: RuleTouch) => after.rebateUsdCents - before.rebateUsdCents,
  electricityBefore: ({ before }: RuleTouch) => before.lifetimeElectricityKWh,
  electricityAfter: ({ after }: RuleTouch) => after.lifetimeElectricityKWh,
  gasBefore: ({ before }: RuleTouch) => before.lifetimeNaturalGasTherms,
  gasAfter: ({ after }: RuleTouch) => after.lifetimeNaturalGasTherms,
  deemedElectricityBefore: ({ before }: RuleTouch) => deemedKWh(before),
  deemedElectricityAfter: ({ after }: RuleTouch) => deemedKWh(after),
  deemedGasBefore: ({ before }: RuleTouch) => before.deemed?.heatingTherms ?? 0,
  deemedGasAfter: ({ after }: RuleTouch) => after.deemed?.heatingTherms ?? 0,
};
type Figure = keyof typeof FIGURES;

function createSums() {
  const names = Object.keys(FIGURES) as Figure[];
  const sums = Object.fromEntries(names.map((name) => [name, { count: 0, sum: 0, sumOfSquares: 0 }])) as Record<
    Figure,
    SampleSums
  >;
  return {
    add(touch: RuleTouch): void {
      for (const name of names) {
        const value = FIGURES[name](touch);
        sums[name].count++;
        sums[name].sum += value;
        sums[name].sumOfSquares += value ** 2;
      }
    },
    total: (name: Figure, populationCount: number) => estimateTotal(sums[name], populationCount),
  };
}

/**
 * Replays a rule over the standing claims of a program, each against the rule that held on the day its work was done.
 * Nothing is changed: what was decided stays decided. The claims stream by in the order of their ids, which are random,
 * so the first `most` of them are a simple random sample; without `most` all are gone through, in constant memory.
 */
export async function replayProgramRule(
  store: Store,
  actor: MemberActor,
  { programId, rule, most = Number.POSITIVE_INFINITY }: { programId: string; rule: ProgramRule; most?: number },
): Promise<RuleReplay> {
  requireAllowed(actor, "program.edit");
  const { rules, standing } = await store.withOrganization(actor, async ({ programs, claimReview }) => ({
    rules: await programs.rules(programId),
    standing: await claimReview.standingCount(programId),
  }));
  const dated = rules.flatMap(({ effectiveOn, document }) => {
    const parsed = programRuleSchema.safeParse(document);
    return parsed.success ? [{ effectiveOn, rule: parsed.data }] : [];
  });
  const sums = createSums();
  const examples: TouchedClaim[] = [];
  let replayedCount = 0;
  let afterId: string | undefined;
  for (let hasMore = true; hasMore && replayedCount < most; ) {
    const rows = await store.withOrganization(actor, ({ claimReview }) =>
      claimReview.packets(programId, { afterId, limit: PAGE }),
    );
    for (const { id, reference, organizationId, state, completedOn, packet } of rows) {
      const held = dated.find(({ effectiveOn }) => effectiveOn <= completedOn)?.rule;
      if (!held || !isStillStanding(state) || replayedCount >= most) continue;
      // A stored packet was read by its schema when it came in.
      const claim = JSON.parse(packet) as Claim;
      const deemed = await deemedUnderRules(claim, { from: held, to: rule }, loadReferenceData);
      const touch = replayRule(claim, held, rule, deemed);
      replayedCount++;
      sums.add(touch);
      if (touch.isTouched && examples.length < MOST_SHOWN)
        examples.push({ id, reference, contractorId: organizationId, ...touch });
    }
    afterId = rows.at(-1)?.id;
    hasMore = rows.length === PAGE;
  }
  // A claim that came in meanwhile is not among those counted before.
  const standingCount = Math.max(standing, replayedCount);
  const total = (name: Figure) => sums.total(name, standingCount);
  return {
    replayedCount,
    standingCount,
    touched: total("touched"),
    rebatesBeforeUsdCents: total("rebatesBefore"),
    rebatesAfterUsdCents: total("rebatesAfter"),
    changeUsdCents: total("change"),
    lifetimeElectricityKWh: { before: total("electricityBefore"), after: total("electricityAfter") },
    lifetimeNaturalGasTherms: { before: total("gasBefore"), after: total("gasAfter") },
    deemedElectricityKWh: { before: total("deemedElectricityBefore"), after: total("deemedElectricityAfter") },
    deemedNaturalGasTherms: { before: total("deemedGasBefore"), after: total("deemedGasAfter") },
    examples,
  };
}
