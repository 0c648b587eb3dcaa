"use client";

import { Button } from "#app/design/button.tsx";
import { EmptyState } from "#app/design/empty-state.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import { type Draft, listAt, newId, textAt } from "../draft.ts";
import { EntryList } from "../entry-list.tsx";
import { choiceLabel } from "../field-words.ts";
import { ChoiceAt, FlagAt, NumberAt, TextAt } from "../fields.tsx";
import { NotesAt } from "../notes.tsx";
import styles from "../trip.module.css";
import { useTrip } from "../trip-context.ts";
import { Instruments } from "./instruments.tsx";
import { fanOptions, gaugeOptions, systemOptions } from "./job-options.ts";
import { DeltaQPoints, ReadingPoints } from "./reading-points.tsx";

const TEST_KINDS = [
  { kind: "total-leakage", label: "Total leakage", hint: "Test fan on the ducts, registers sealed." },
  { kind: "leakage-to-outside", label: "Leakage to outside", hint: "The house at the same pressure as the ducts." },
  { kind: "blower-door-subtraction", label: "Subtraction", hint: "Two tests of the house, registers open and sealed." },
  { kind: "delta-q", label: "Delta-Q", hint: "Test of the house with the air handler on and off." },
] as const;

const testName = (test: Draft): string =>
  [
    TEST_KINDS.find(({ kind }) => kind === test.kind)?.label ?? "Test",
    choiceLabel("stage", textAt(test, "stage") ?? "").toLowerCase(),
  ].join(", ");

export function ReadingsStep() {
  const { draft, set } = useTrip();
  const tests = listAt(draft, "tests");
  const add = (kind: string) => {
    const systems = listAt(draft, "systems");
    const common = {
      id: newId(tests, "test"),
      kind,
      stage: "existing",
      ...(systems.length > 0 ? { systemId: systems[0]?.id ?? "" } : {}),
    };
    const fan = { direction: "pushing", points: [{}] };
    const forms: Readonly<Record<string, Draft>> = {
      "total-leakage": fan,
      "leakage-to-outside": fan,
      "blower-door-subtraction": {},
      "delta-q": { points: [{}, {}, {}, {}, {}] },
    };
    set("tests", [...tests, { ...common, ...forms[kind] }]);
  };
  return (
    <>
      <EntryList
        path="tests"
        title={testName}
        empty={
          <EmptyState title="No test yet">
            Without a test the leaks are only judged by eye, and the range of the savings is wide. One reading at 25 Pa
            already narrows it.
          </EmptyState>
        }
      >
        {(path, test) => <Test path={path} test={test} />}
      </EntryList>
      <section aria-labelledby="add-test">
        <h2 id="add-test">Add a test</h2>
        <div className={styles.addTests}>
          {TEST_KINDS.map(({ kind, label, hint }) => (
            <div key={kind}>
              <Button variant="secondary" isWide onClick={() => add(kind)}>
                {label}
              </Button>
              <p className={styles.small}>{hint}</p>
            </div>
          ))}
        </div>
      </section>
      <Instruments />
    </>
  );
}

function Test({ path, test }: { path: string; test: Draft }) {
  const { draft } = useTrip();
  const hasFan = test.kind === "total-leakage" || test.kind === "leakage-to-outside";
  return (
    <>
      <div className={styles.pairs}>
        {listAt(draft, "systems").length > 1 ? (
          <ChoiceAt path={`${path}/systemId`} options={systemOptions(draft)} unknownLabel="The whole house" />
        ) : null}
        <ChoiceAt path={`${path}/stage`} options={stageOptions} isRequired />
        {hasFan ? <ChoiceAt path={`${path}/direction`} isRow /> : null}
      </div>
      {test.kind === "leakage-to-outside" ? (
        <div className={styles.pairs}>
          <NumberAt path={`${path}/houseToOutsidePressurePa`} />
          <NumberAt path={`${path}/ductToHousePressurePa`} />
        </div>
      ) : null}
      {hasFan ? <ReadingPoints path={path} test={test} /> : null}
      {test.kind === "delta-q" ? <DeltaQPoints path={path} /> : null}
      {test.kind === "blower-door-subtraction" ? (
        <>
          <NumberAt path={`${path}/wholeHouseCfm50`} />
          <NumberAt path={`${path}/envelopeCfm50`} />
          <NumberAt path={`${path}/ductToHousePressurePa`} />
        </>
      ) : null}
      <NotesAt path={path} />
      <Disclosure title="Baselines, temperatures, who and when">
        {hasFan ? (
          <>
            <ChoiceAt path={`${path}/part`} unknownLabel="All of it" options={partOptions} />
            <FlagAt path={`${path}/includesAirHandler`} />
            <NumberAt path={`${path}/baselineBeforePa`} />
            <NumberAt path={`${path}/baselineAfterPa`} />
            <ChoiceAt path={`${path}/fanId`} options={fanOptions(draft)} unknownLabel="Not named" />
          </>
        ) : null}
        <ChoiceAt path={`${path}/gaugeId`} options={gaugeOptions(draft)} unknownLabel="Not named" />
        <NumberAt path={`${path}/indoorTemperatureF`} />
        <NumberAt path={`${path}/outdoorTemperatureF`} />
        <TextAt path={`${path}/date`} label="Date of the test" hint="As 2026-11-25." />
        <TextAt path={`${path}/time`} hint="As 14:05." />
        <TextAt path={`${path}/by`} />
      </Disclosure>
    </>
  );
}

const stageOptions = ["existing", "rough-in", "during-work", "final", "retest"].map((value) => ({
  value,
  label: choiceLabel("stage", value),
}));
const partOptions = ["supply", "return"].map((value) => ({ value, label: choiceLabel("part", value) }));
