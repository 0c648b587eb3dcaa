import { Button } from "#app/design/button.tsx";
import { ChoiceCards } from "#app/design/choice-cards.tsx";
import { TextArea } from "#app/design/text-field.tsx";
import { type ClaimSide, nextStates } from "#lib/claims/claim-state.ts";
import type { ClaimSummary } from "#lib/store/repositories/claims.ts";
import type { MemberRole } from "#lib/store/repositories/organizations.ts";
import { STEP_WORDS } from "../../claim-words.ts";
import styles from "../../program.module.css";
import { comment, decide } from "./actions.ts";

/** What one can do next: say something, or take the claim a step further with a reason. Its numbers are not among it. */
export function ClaimSteps({ claim, side, role }: { claim: ClaimSummary; side: ClaimSide; role: MemberRole }) {
  if (role === "crew") return null;
  const steps = nextStates(claim.state, side);
  return (
    <>
      {steps.length > 0 ? (
        <form action={decide} className={styles.form}>
          <input type="hidden" name="id" value={claim.id} />
          <input type="hidden" name="from" value={claim.state} />
          <ChoiceCards
            label="Next step"
            name="to"
            defaultValue={steps.length === 1 ? steps[0] : undefined}
            required
            choices={steps.map((state) => ({ value: state, label: STEP_WORDS[state] }))}
          />
          <TextArea label="Reason" name="reason" rows={3} required hint="The other side reads it, and it stays." />
          <Button type="submit" isWide>
            Decide
          </Button>
        </form>
      ) : null}
      <form action={comment} className={styles.form}>
        <input type="hidden" name="id" value={claim.id} />
        <TextArea label="Comment" name="text" rows={2} required />
        <Button type="submit" variant="secondary" isWide>
          Add the comment
        </Button>
      </form>
    </>
  );
}
