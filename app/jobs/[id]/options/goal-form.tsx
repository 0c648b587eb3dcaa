import { Button } from "#app/design/button.tsx";
import { ChoiceCards } from "#app/design/choice-cards.tsx";
import { QuantityField } from "#app/design/quantity-field.tsx";
import type { Plan } from "#lib/job/plan.ts";
import { setGoal } from "./actions.ts";
import { GOAL_FIELDS, GOALS, typedGoal } from "./goal-fields.ts";
import styles from "./options.module.css";

/** What the options are for, and the limits that all of them keep. What was typed and could not be used comes back. */
export function GoalForm({
  jobId,
  plan,
  typed,
  wrong,
}: {
  jobId: string;
  plan: Plan | undefined;
  typed: Readonly<Record<string, string | undefined>>;
  wrong: readonly string[];
}) {
  return (
    <form action={setGoal} noValidate>
      <input type="hidden" name="jobId" value={jobId} />
      <ChoiceCards
        label="What the work is for"
        name="objective"
        choices={GOALS}
        defaultValue={typed.objective ?? plan?.objective ?? "reach-target"}
      />
      <div className={styles.fields}>
        {GOAL_FIELDS.map((field) => (
          <QuantityField
            key={field.name}
            name={field.name}
            label={field.label}
            hint={field.hint}
            unit={field.unit}
            isOptional
            error={wrong.includes(field.name) ? field.problem : undefined}
            defaultValue={typed[field.name] ?? typedGoal(plan, field)}
          />
        ))}
      </div>
      <Button type="submit" variant="secondary">
        Find the options
      </Button>
    </form>
  );
}
