import type { MemberActor } from "#lib/access/actor.ts";
import { requireAllowed } from "#lib/access/can.ts";
import type { Claim } from "#lib/claims/claim-schema.ts";
import { isStillStanding } from "#lib/claims/claim-state.ts";
import { type ProgramRule, programRuleSchema } from "#lib/claims/program-rule.ts";
import { type RuleTouch, replayRule } from "#lib/claims/replay-rule.ts";
import type { Store } from "#lib/store/open-store.ts";
import type { Cents } from "#lib/units/quantity.ts";

export interface TouchedClaim extends RuleTouch {
  id: string;
  reference: string;
  contractorId: string;
}

export interface RuleReplay {
  replayedCount: number;
  touchedCount: number;
  rebatesBeforeUsdCents: Cents;
  rebatesAfterUsdCents: Cents;
  /** The first of them; the counts are of all. */
  touched: readonly TouchedClaim[];
  /** There were more claims than one look takes. */
  isCut: boolean;
}

const PAGE = 250;
const MOST_CLAIMS = 5000;
const MOST_SHOWN = 100;

/**
 * Replays a rule over the standing claims of a program, each against the rule that held on the day its work was done.
 * Nothing is changed: what was decided stays decided.
 */
export async function replayProgramRule(
  store: Store,
  actor: MemberActor,
  { programId, rule, most = MOST_CLAIMS }: { programId: string; rule: ProgramRule; most?: number },
): Promise<RuleReplay> {
  requireAllowed(actor, "program.edit");
  const rules = await store.withOrganization(actor, ({ programs }) => programs.rules(programId));
  const dated = rules.flatMap(({ effectiveOn, document }) => {
    const parsed = programRuleSchema.safeParse(document);
    return parsed.success ? [{ effectiveOn, rule: parsed.data }] : [];
  });
  const replay = { replayedCount: 0, touchedCount: 0, rebatesBeforeUsdCents: 0, rebatesAfterUsdCents: 0 };
  const touched: TouchedClaim[] = [];
  let afterId: string | undefined;
  for (;;) {
    const limit = Math.min(PAGE, most - replay.replayedCount);
    if (limit <= 0) return { ...replay, touched, isCut: true };
    const rows = await store.withOrganization(actor, ({ claimReview }) =>
      claimReview.packets(programId, { afterId, limit }),
    );
    for (const { id, reference, organizationId, state, completedOn, packet } of rows) {
      const held = dated.find(({ effectiveOn }) => effectiveOn <= completedOn)?.rule;
      if (!held || !isStillStanding(state)) continue;
      // A stored packet was read by its schema when it came in.
      const touch = replayRule(JSON.parse(packet) as Claim, held, rule);
      replay.replayedCount++;
      replay.rebatesBeforeUsdCents += touch.before.rebateUsdCents;
      replay.rebatesAfterUsdCents += touch.after.rebateUsdCents;
      if (!touch.isTouched) continue;
      replay.touchedCount++;
      if (touched.length < MOST_SHOWN) touched.push({ id, reference, contractorId: organizationId, ...touch });
    }
    afterId = rows.at(-1)?.id;
    if (rows.length < limit) return { ...replay, touched, isCut: false };
  }
}
