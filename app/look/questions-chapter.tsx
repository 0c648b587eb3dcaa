import { Button, LinkButton } from "#app/design/button.tsx";
import { Checkbox } from "#app/design/checkbox.tsx";
import { ChoiceCards } from "#app/design/choice-cards.tsx";
import { FileField } from "#app/design/file-field.tsx";
import { PlainSelect } from "#app/design/plain-select.tsx";
import { QuantityField } from "#app/design/quantity-field.tsx";
import { Select } from "#app/design/select.tsx";
import { Term } from "#app/design/term.tsx";
import { TextArea, TextField } from "#app/design/text-field.tsx";
import { TripRail } from "#app/design/trip-rail.tsx";
import styles from "./look.module.css";
import { QuantitySample } from "./quantity-sample.tsx";
import { Chapter, Specimen } from "./specimen.tsx";

const PLACES = ["attic", "vented crawlspace", "sealed crawlspace", "basement", "garage", "inside the rooms"].map(
  (label) => ({ id: label, label }),
);

/** What it asks with. */
export function QuestionsChapter() {
  return (
    <Chapter id="questions" title="What it asks with">
      <Specimen name="Buttons">
        <div className={styles.row}>
          <Button>Continue</Button>
          <Button variant="secondary">Add another leak</Button>
          <Button variant="quiet">I don’t know</Button>
          <Button variant="danger">Delete</Button>
          <Button disabled>Send</Button>
          <LinkButton href="#answers" variant="secondary">
            Go to the answers
          </LinkButton>
        </div>
      </Specimen>
      <Specimen name="Words">
        <TextField
          label="What to call this house"
          hint="As you would say it on the phone."
          defaultValue="Hartwell Lane (invented)"
        />
        <TextArea label="Anything the crew should know" isOptional defaultValue="Dog in the yard." />
      </Specimen>
      <Specimen name="A number with its unit">
        <QuantityField label="Duct pressure, in pascals" unit="Pa" defaultValue="48.6" />
        <QuantitySample />
        <QuantityField
          id="fan-pressure"
          label="Fan pressure, in pascals"
          unit="Pa"
          defaultValue="2100"
          error="Fan pressure must be between 5 and 600 pascals"
        />
        <QuantityField label="Fan pressure, in pascals" unit="Pa" defaultValue="91.6" isLarge />
      </Specimen>
      <Specimen name="One of a few">
        <ChoiceCards
          label="Flow restrictor on the inlet"
          name="restrictor"
          isRow
          defaultValue="small"
          choices={[
            { value: "small", label: "small" },
            { value: "medium", label: "medium" },
            { value: "none", label: "none" },
          ]}
        />
        <ChoiceCards
          label="Where is most of the ductwork?"
          hint="The place decides how much of the lost heat comes back."
          name="place"
          error="Choose where most of the ductwork is, or say that you do not know"
          choices={[
            { value: "attic", label: "In the attic" },
            { value: "crawl", label: "Under the floor", hint: "crawlspace or basement" },
            { value: "unknown", label: "I don’t know", hint: "Then the attic is taken, and the range grows." },
            { value: "outside", label: "On the roof", isDisabled: true },
          ]}
        />
      </Specimen>
      <Specimen name="One of many">
        <Select label="Where is the leak?" options={PLACES} defaultSelectedId="attic" />
        <Select label="Where is the air handler?" options={PLACES} error="Choose where the air handler stands" />
        <PlainSelect
          label="Who read the gauge?"
          isOptional
          note="Left empty: the answer does without it."
          options={[
            { value: "", label: "I don’t know" },
            { value: "crew", label: "Crew" },
            { value: "estimator", label: "Estimator" },
          ]}
        />
        <PlainSelect
          label="Which kind of test?"
          error="Choose the kind of test"
          options={[
            { value: "", label: "Choose one" },
            { value: "total", label: "Total leakage" },
          ]}
        />
      </Specimen>
      <Specimen name="Left empty: what stands in, what it is worth, and why">
        <QuantityField
          label="Yearly fuel efficiency, in percent"
          unit="%"
          isOptional
          note={
            <>
              Left empty: 80%, could be 72% to 90%. Yearly dollars: $252 to $310.{" "}
              <Term
                meaning="Usual for furnaces of its age without a plate that can be read."
                label="Why this stands in"
              >
                Why
              </Term>
            </>
          }
        />
      </Specimen>
      <Specimen name="A file">
        <FileField id="look-file" label="Bills from a file" hint="Green Button or CSV." isOptional />
        <FileField id="look-file-wrong" label="Weather from a file" error="Choose an EPW or TMY3 file" />
      </Specimen>
      <Specimen name="Yes or no">
        <Checkbox label="Something in or near the house burns fuel" hint="A water heater counts." defaultChecked />
        <Checkbox label="The house was tested with doors open" />
      </Specimen>
      <Specimen name="The trip through the house">
        <TripRail
          steps={[
            { id: "house", label: "House", href: "#questions", state: "done", detail: "1,640 ft², 1978" },
            { id: "equipment", label: "Equipment", href: "#questions", state: "done", detail: "gas 80%, 3 ton" },
            {
              id: "ducts",
              label: "Ducts",
              href: "#questions",
              state: "done",
              detail: "attic, R-4",
              missing: "lengths: adds $40 to the range",
            },
            { id: "readings", label: "Readings", href: "#questions", state: "current", detail: "2 of 3 points" },
            { id: "leaks", label: "Leaks", href: "#questions", state: "waiting" },
            { id: "energy", label: "Energy", href: "#questions", state: "waiting" },
            { id: "plan", label: "Plan", href: "#questions", state: "waiting" },
          ]}
        />
      </Specimen>
    </Chapter>
  );
}
