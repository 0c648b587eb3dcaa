import { Button } from "#app/design/button.tsx";
import { ChoiceCards } from "#app/design/choice-cards.tsx";
import { PlainSelect } from "#app/design/plain-select.tsx";
import { CONNECTION_WORDS, COVER_WORDS, DIRECTION_WORDS, STANDPOINT_WORDS } from "#app/setup/setup-words.ts";
import { FAN_DIRECTIONS } from "#lib/job/instrument-schema.ts";
import { DEMO_FAN } from "#lib/setup/demo-instruments.ts";
import { FAN_CONNECTIONS, REGISTER_COVERS } from "#lib/setup/setup-answers.ts";
import type { PracticeScenario } from "#lib/simulate/practice-scenarios.ts";
import type { PracticeSetup } from "#lib/simulate/practice-setup.ts";
import styles from "../practice.module.css";
import { NUDGES, PRACTICE_CHANNELS, PRACTICE_TAPS } from "../practice-query.ts";
import { CHANNEL_LABELS, TAP_LABELS } from "../practice-words.ts";

const tapOptions = PRACTICE_TAPS.map((value) => ({ value, label: TAP_LABELS[value] }));
const yesNo = (yes: string, no: string) => [
  { value: "yes", label: yes },
  { value: "no", label: no },
];
const said = (isSo: boolean): string => (isSo ? "yes" : "no");

/** Everything a learner may change, in the order in which one sets up a test. */
export function PracticeControls({
  setup,
  scenario,
  nudges,
}: {
  setup: PracticeSetup;
  scenario: PracticeScenario;
  /** Counts the presses of buttons, so that the dials show what these changed. */
  nudges: number;
}) {
  const restrictors = DEMO_FAN.calibrations.filter(({ direction }) => direction === setup.direction);
  return (
    <div className={styles.controls}>
      <fieldset>
        <legend>Speed</legend>
        <Dial name="duct-fan" label="Duct fan" share={setup.ductFanSpeedShare} nudges={nudges} />
        {setup.testKind === "leakage-to-outside" ? (
          <Dial name="house-fan" label="House fan" share={setup.houseFanSpeedShare} nudges={nudges} />
        ) : null}
        <noscript>
          <Button type="submit" variant="secondary">
            Look at the gauge
          </Button>
        </noscript>
      </fieldset>
      <fieldset>
        <legend>Fan</legend>
        <ChoiceCards
          label="Direction"
          name="direction"
          isRow
          choices={FAN_DIRECTIONS.map((value) => ({ value, label: DIRECTION_WORDS[value] }))}
          defaultValue={setup.direction}
        />
        <div className={styles.pairs}>
          <PlainSelect
            name="restrictor"
            label="Flow restrictor"
            options={restrictors.map((row) => ({ value: row.restrictorId, label: row.restrictorLabel }))}
            defaultValue={setup.restrictorId}
          />
          <PlainSelect
            name="straightener"
            label="Flow straightener"
            options={yesNo("before the fan", "none")}
            defaultValue={said(setup.hasFlowStraightener)}
          />
          <PlainSelect
            name="connect"
            label="Where the fan connects"
            options={FAN_CONNECTIONS.map((value) => ({ value, label: CONNECTION_WORDS[value] }))}
            defaultValue={setup.fanConnection}
          />
        </div>
      </fieldset>
      <fieldset>
        <legend>Gauge and hoses</legend>
        <PlainSelect
          name="at"
          label="Where you stand with the gauge"
          options={(["house", "attic"] as const).map((value) => ({ value, label: STANDPOINT_WORDS[value] }))}
          defaultValue={setup.personAt}
        />
        {PRACTICE_CHANNELS.map((id) => (
          <fieldset key={id}>
            <legend className={styles.channel}>{CHANNEL_LABELS[id]}</legend>
            <div className={styles.pairs}>
              <PlainSelect
                name={`${id}-signal`}
                label="Signal"
                options={tapOptions}
                defaultValue={setup.hoses[id].signal}
              />
              <PlainSelect
                name={`${id}-reference`}
                label="Reference"
                options={tapOptions}
                defaultValue={setup.hoses[id].reference}
              />
            </div>
          </fieldset>
        ))}
      </fieldset>
      <fieldset>
        <legend>House and registers</legend>
        <div className={styles.pairs}>
          <PlainSelect
            name="door"
            label="Door to outside"
            options={yesNo("open", "shut")}
            defaultValue={said(setup.isOutsideDoorOpen)}
          />
          <PlainSelect
            name="air-handler"
            label="Air handler"
            options={yesNo("running", "off")}
            defaultValue={said(setup.isAirHandlerOn)}
          />
          <PlainSelect
            name="filter"
            label="Filter"
            options={yesNo("in", "out")}
            defaultValue={said(setup.isFilterIn)}
          />
          <PlainSelect
            name="cover"
            label="What covers the registers"
            options={REGISTER_COVERS.map((value) => ({ value, label: COVER_WORDS[value] }))}
            defaultValue={setup.registerCover}
          />
          <PlainSelect
            name="walked"
            label="Registers counted, open ones covered"
            options={yesNo("yes, walked every room", "not yet")}
            defaultValue={said(scenario.start.forgottenBranchIds.length > 0 && setup.forgottenBranchIds.length === 0)}
          />
        </div>
      </fieldset>
    </div>
  );
}

/** A dial to turn, and buttons for who would rather press: coarse and fine, both ways. */
function Dial({ name, label, share, nudges }: { name: string; label: string; share: number; nudges: number }) {
  const percent = Math.round(share * 1000) / 10;
  return (
    <div className={styles.dial}>
      <label htmlFor={name}>
        {label} <output htmlFor={name}>{percent} %</output>
      </label>
      <input
        key={nudges}
        id={name}
        name={name}
        type="range"
        min={0}
        max={100}
        step={0.1}
        defaultValue={percent}
        aria-valuetext={`${percent} percent`}
      />
      <div className={styles.nudges}>
        {NUDGES.map((by) => (
          <Button key={by} type="submit" variant="secondary" name={`${name}-nudge`} value={by}>
            {by > 0 ? "+" : "−"}
            {Math.abs(by)}
            <span className={styles.hidden}> percent, {label}</span>
          </Button>
        ))}
      </div>
    </div>
  );
}
