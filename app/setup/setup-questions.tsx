import { Button } from "#app/design/button.tsx";
import { ChoiceCards } from "#app/design/choice-cards.tsx";
import { ErrorSummary } from "#app/design/error-summary.tsx";
import { PlainSelect } from "#app/design/plain-select.tsx";
import { QuantityField } from "#app/design/quantity-field.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import { UNIT_WORDS } from "#app/jobs/trip/field-words.ts";
import { SIDES } from "#lib/job/duct-system.ts";
import { FAN_DIRECTIONS } from "#lib/job/instrument-schema.ts";
import { FAN_CONNECTIONS, REGISTER_COVERS, SETUP_TEST_KINDS, STANDPOINTS } from "#lib/setup/setup-answers.ts";
import { TEST_TRAITS } from "#lib/setup/test-traits.ts";
import { shownUnitOf } from "#lib/units/display-unit.ts";
import styles from "./setup.module.css";
import { SetupForm } from "./setup-form.tsx";
import { type SetupForm as Answered, type SetupInstruments, stageOf } from "./setup-query.ts";
import { CONNECTION_WORDS, COVER_WORDS, DIRECTION_WORDS, STAGE_WORDS, STANDPOINT_WORDS } from "./setup-words.ts";

const listed = <T extends string>(words: Readonly<Record<T, string>>, values: readonly T[]) =>
  values.map((value) => ({ value, label: words[value] }));
const named = (list: readonly { id: string; name: string }[]) => [
  { value: "", label: "Not named" },
  ...list.map(({ id, name }) => ({ value: id, label: name })),
];

/** The few answers that a sheet is made from. */
export function SetupQuestions({
  form,
  instruments,
  jobId,
}: {
  form: Answered;
  instruments: SetupInstruments;
  jobId?: string | undefined;
}) {
  const { answers, typed, errors } = form;
  const { usesDuctFan, usesHouseFan, sealsRegisters } = TEST_TRAITS[answers.testKind];
  const flowUnit = shownUnitOf({ unit: "cfm", system: form.units });
  const errorOf = (fieldId: string) => errors.find((error) => error.fieldId === fieldId)?.text;
  return (
    <SetupForm className={styles.questions}>
      <input type="hidden" name="units" value={form.units} />
      {jobId ? <input type="hidden" name="job" value={jobId} /> : null}
      <ErrorSummary errors={errors} />
      <div className={styles.pairs}>
        <PlainSelect
          id="test"
          name="test"
          label="Test"
          options={SETUP_TEST_KINDS.map((value) => ({ value, label: TEST_TRAITS[value].title }))}
          defaultValue={answers.testKind}
          key={`test ${answers.testKind}`}
        />
        {answers.side ? (
          <ChoiceCards
            label="Side"
            name="side"
            isRow
            choices={SIDES.map((value) => ({ value, label: value === "supply" ? "Supply" : "Return" }))}
            defaultValue={answers.side}
            key={`side ${answers.side}`}
          />
        ) : null}
        {usesDuctFan || (usesHouseFan && answers.testKind !== "delta-q") ? (
          <ChoiceCards
            label="Direction"
            name="direction"
            isRow
            choices={FAN_DIRECTIONS.map((value) => ({ value, label: DIRECTION_WORDS[value] }))}
            defaultValue={answers.direction}
            key={`direction ${answers.direction}`}
          />
        ) : null}
        {usesDuctFan ? (
          <PlainSelect
            id="connect"
            name="connect"
            label="Where the fan connects"
            options={listed(CONNECTION_WORDS, FAN_CONNECTIONS)}
            defaultValue={answers.fanConnection}
            key={`connect ${answers.fanConnection}`}
          />
        ) : null}
        <PlainSelect
          id="at"
          name="at"
          label="Where you stand with the gauge"
          options={listed(STANDPOINT_WORDS, STANDPOINTS)}
          defaultValue={answers.personAt}
        />
        {sealsRegisters ? (
          <PlainSelect
            id="cover"
            name="cover"
            label="What covers the registers"
            options={listed(COVER_WORDS, REGISTER_COVERS)}
            defaultValue={answers.registerCover}
          />
        ) : null}
      </div>
      <Disclosure
        title={usesDuctFan ? "Fan, flow to expect, stage, flames indoors" : "Gauge, stage, flames indoors"}
        isOpen={errors.length > 0}
      >
        <div className={styles.pairs}>
          {usesDuctFan ? (
            <>
              <PlainSelect
                id="fan"
                name="fan"
                label="Test fan"
                options={named(instruments.fans)}
                defaultValue={answers.fan?.id ?? ""}
              />
              <QuantityField
                id="expect"
                name="expect"
                label={`Flow to expect, ${UNIT_WORDS[flowUnit]}`}
                hint="From the limit to be met, or from an earlier test."
                error={errorOf("expect")}
                isOptional
                unit={flowUnit}
                defaultValue={typed.expect}
              />
            </>
          ) : null}
          <PlainSelect
            id="gauge"
            name="gauge"
            label="Gauge"
            options={named(instruments.gauges)}
            defaultValue={answers.gauge?.id ?? ""}
          />
          {sealsRegisters ? (
            <QuantityField
              id="registers"
              name="registers"
              label="Registers and grilles to cover"
              error={errorOf("registers")}
              unit=""
              defaultValue={typed.registers}
            />
          ) : null}
          <PlainSelect
            id="stage"
            name="stage"
            label="When in the work"
            options={listed(STAGE_WORDS, ["existing", "rough-in", "rough-in-without", "final"])}
            defaultValue={stageOf(answers)}
          />
          <PlainSelect
            id="burns"
            name="burns"
            label="A flame indoors: furnace, water heater, fire"
            options={[
              { value: "yes", label: "Yes, or not sure" },
              { value: "no", label: "No, I have looked" },
            ]}
            defaultValue={answers.hasCombustionAppliance ? "yes" : "no"}
          />
        </div>
      </Disclosure>
      <Button type="submit">Show the set-up</Button>
    </SetupForm>
  );
}
