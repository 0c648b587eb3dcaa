import { Button } from "#app/design/button.tsx";
import { TextArea, TextField } from "#app/design/text-field.tsx";
import styles from "../program.module.css";
import { putInForce } from "./actions.ts";
import { RULE_FIELDS, type RuleDraft } from "./rule-draft.ts";

/** The rule that was tried, made the program's from a day on. */
export function PutInForce({ programId, draft, earliest }: { programId: string; draft: RuleDraft; earliest: string }) {
  return (
    <section aria-labelledby="force">
      <h2 id="force">Put it in force</h2>
      <p>
        Work done from that day on counts by it. Work done before stays under the rule it was done by, and the earlier
        editions stay to be read.
      </p>
      <form action={putInForce} className={`${styles.stack} ${styles.sender}`}>
        <input type="hidden" name="programId" value={programId} />
        {RULE_FIELDS.flatMap((name) =>
          [draft[name]]
            .flat()
            .map((value) => <input type="hidden" key={`${name} ${value}`} name={name} value={value} />),
        )}
        <TextField
          label="First day"
          hint={`As year-month-day, ${earliest} or later.`}
          name="effectiveOn"
          defaultValue={earliest}
          autoComplete="off"
        />
        <TextArea label="Reason" hint="It stays with the edition, for everyone who asks why." name="reason" rows={3} />
        <Button type="submit">Put in force</Button>
      </form>
    </section>
  );
}
