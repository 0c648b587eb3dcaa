import { Button } from "#app/design/button.tsx";
import { ChoiceCards } from "#app/design/choice-cards.tsx";
import { DisplaySettings } from "#app/design/display-settings.tsx";
import { QuantityField } from "#app/design/quantity-field.tsx";
import { StatGrid } from "#app/design/stat-block.tsx";
import { TextField } from "#app/design/text-field.tsx";
import { ThemeSwitch } from "#app/design/theme-switch.tsx";
import { Wordmark } from "#app/design/wordmark.tsx";
import styles from "./look.module.css";
import { SaveSample } from "./save-sample.tsx";
import { Chapter, Specimen } from "./specimen.tsx";

/** Shown as they look under a pointer or with the focus, without either. */
const SHOWN = [
  { id: "rest", label: "At rest" },
  { id: "hover", label: "Under the pointer" },
  { id: "focus", label: "With the focus" },
] as const;

/** What a part looks like while somebody uses it, waits for it, or has nothing in it yet. */
export function StatesChapter() {
  return (
    <Chapter id="states" title="While one uses it">
      {SHOWN.map(({ id, label }) => (
        <Specimen key={id} name={label}>
          <div data-shown={id}>
            <TextField label="Name of this place" defaultValue="Attic over the garage" />
            <ChoiceCards
              label="Side"
              name={`side-${id}`}
              isRow
              defaultValue="supply"
              choices={[
                { value: "supply", label: "Supply" },
                { value: "return", label: "Return" },
              ]}
            />
            <div className={styles.row}>
              <Button>Continue</Button>
              <Button variant="secondary">Add a run</Button>
              <Button variant="quiet">Undo</Button>
              <Button variant="danger">Delete</Button>
            </div>
          </div>
        </Specimen>
      ))}
      <Specimen name="Cannot be used just now">
        <div className={styles.row}>
          <Button disabled>Continue</Button>
          <Button variant="secondary" disabled>
            Add a run
          </Button>
          <Button variant="quiet" disabled>
            Undo
          </Button>
          <Button variant="danger" disabled>
            Delete
          </Button>
        </div>
      </Specimen>
      <Specimen name="A form while it is saved, and one that was refused">
        <SaveSample />
      </Specimen>
      <Specimen name="Not worked out yet: the value stands, its doubt follows">
        <StatGrid stats={[{ id: "wait", label: "Saved by sealing", value: "$310", unit: "a year", doubt: "…" }]} />
        <QuantityField label="Stories" unit="" isOptional note="Left empty: the answer does without it." />
      </Specimen>
      <Specimen name="The head of a page">
        <div className={styles.row}>
          <Wordmark />
          <ThemeSwitch />
          <DisplaySettings units={<p>US or SI</p>} />
        </div>
      </Specimen>
    </Chapter>
  );
}
