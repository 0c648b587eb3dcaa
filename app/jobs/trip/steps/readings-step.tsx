"use client";

import Link from "next/link";
import { Button } from "#app/design/button.tsx";
import { EmptyState } from "#app/design/empty-state.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import { setupHref } from "#app/setup/setup-href.ts";
import { type Draft, listAt, newId, numberAt, textAt } from "../draft.ts";
import { EntryList } from "../entry-list.tsx";
import { choiceLabel } from "../field-words.ts";
import { ChoiceAt, FlagAt, NumberAt, TextAt } from "../fields.tsx";
import { NotesAt } from "../notes.tsx";
import styles from "../trip.module.css";
import { useTrip } from "../trip-context.ts";
import { CannotReach } from "./cannot-reach.tsx";
import { Instruments } from "./instruments.tsx";
import { fanOptions, gaugeOptions, systemOptions } from "./job-options.ts";
import type { OwnInstruments } from "./own-instruments.ts";
import { DeltaQPoints, ReadingPoints } from "./reading-points.tsx";
import { ReadingVerdict, VerdictToCome } from "./reading-verdict.tsx";

const TEST_KINDS = [
  { kind: "total-leakage", label: "Total leakage", hint: "Test fan on the ducts, registers sealed." },
  { kind: "leakage-to-outside", label: "Leakage to outside", hint: "The house at the same pressure as the ducts." },
  { kind: "blower-door-subtraction", label: "Subtraction", hint: "Two tests of the house, registers open and sealed." },
  { kind: "delta-q", label: "Delta-Q", hint: "Test of the house with the air handler on and off." },
] as const;

/** Kind, part and stage; a number after it where another test before it has the same name. */
function testName(test: Draft, index: number, tests: readonly Draft[]): string {
  const name = plainName(test);
  const earlier = tests.slice(0, index).filter((other) => plainName(other) === name).length;
  return earlier === 0 ? name : `${name}, ${earlier + 1}`;
}

function plainName(test: Draft): string {
  const part = textAt(test, "part");
  return [
    TEST_KINDS.find(({ kind }) => kind === test.kind)?.label ?? "Test",
    ...(part === "supply" || part === "return" ? [choiceLabel("part", part).toLowerCase()] : []),
    choiceLabel("stage", textAt(test, "stage") ?? "").toLowerCase(),
  ].join(", ");
}

export function ReadingsStep({ own }: { own: OwnInstruments }) {
  const { draft, set } = useTrip();
  const tests = listAt(draft, "tests");
  const add = (kind: string) => {
    const systems = listAt(draft, "systems");
    const last = tests.at(-1);
    const fanId = last?.fanId ?? listAt(draft, "instruments/fans")[0]?.id;
    const gaugeId = last?.gaugeId ?? listAt(draft, "instruments/gauges")[0]?.id;
    const date = textAt(draft, "date");
    const common = {
      id: newId(tests, "test"),
      kind,
      stage: textAt(last ?? {}, "stage") ?? "existing",
      ...(systems.length > 0 ? { systemId: systems[0]?.id ?? "" } : {}),
      ...(gaugeId ? { gaugeId } : {}),
      ...(date ? { date } : {}),
    };
    // One usually reads the next test with the same fan, the same way round.
    const direction = textAt(last ?? {}, "direction") ?? "pushing";
    const fan = { direction, points: [{}], ...(fanId ? { fanId } : {}) };
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
        title={(test, index) => testName(test, index, tests)}
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
      <Instruments own={own} />
    </>
  );
}

function Test({ path, test }: { path: string; test: Draft }) {
  const { draft, readings } = useTrip();
  const hasFan = test.kind === "total-leakage" || test.kind === "leakage-to-outside";
  const reading = readings[String(test.id)];
  const isOutOfReach = reading?.notes.some(({ code }) => code === "reference-not-reached") ?? false;
  return (
    <>
      <div className={styles.pairs}>
        {listAt(draft, "systems").length > 1 ? (
          <ChoiceAt path={`${path}/systemId`} options={systemOptions(draft)} unknownLabel="The whole house" />
        ) : null}
        {hasFan ? <ChoiceAt path={`${path}/direction`} isRow hint={null} /> : null}
        {hasFan && listAt(draft, "instruments/fans").length > 0 ? (
          <ChoiceAt path={`${path}/fanId`} options={fanOptions(draft)} unknownLabel="Not named, I enter flows" />
        ) : null}
      </div>
      <SetUpLink test={test} />
      {test.kind === "leakage-to-outside" ? <BothPressures path={path} test={test} /> : null}
      {hasFan ? <ReadingPoints path={path} test={test} /> : null}
      {test.kind === "delta-q" ? <DeltaQPoints path={path} /> : null}
      {test.kind === "blower-door-subtraction" ? (
        <>
          <NumberAt path={`${path}/wholeHouseCfm50`} />
          <NumberAt path={`${path}/envelopeCfm50`} />
          <NumberAt path={`${path}/ductToHousePressurePa`} isSigned />
        </>
      ) : null}
      {reading ? <ReadingVerdict path={path} test={test} reading={reading} /> : hasFan ? <VerdictToCome /> : null}
      {reading ? null : <NotesAt path={path} />}
      {hasFan ? <CannotReach path={path} test={test} isOpen={isOutOfReach} key={`reach ${isOutOfReach}`} /> : null}
      <Disclosure title="Stage, baselines, temperatures, who and when">
        <ChoiceAt path={`${path}/stage`} options={stageOptions} isRequired />
        {hasFan ? (
          <>
            <ChoiceAt path={`${path}/part`} unknownLabel="All of it" options={partOptions} />
            <FlagAt path={`${path}/includesAirHandler`} />
            <NumberAt path={`${path}/baselineBeforePa`} isSigned />
            <NumberAt path={`${path}/baselineAfterPa`} isSigned />
          </>
        ) : null}
        <ChoiceAt path={`${path}/gaugeId`} options={gaugeOptions(draft)} unknownLabel="Not named" />
        <NumberAt path={`${path}/indoorTemperatureF`} />
        <NumberAt path={`${path}/outdoorTemperatureF`} />
        <TextAt path={`${path}/date`} label="Date of the test" hint="As 2026-11-25." />
        <TextAt path={`${path}/time`} hint="As 14:05." />
        <TextAt path={`${path}/by`} />
        <TextAt path={`${path}/note`} label="Note" />
      </Disclosure>
    </>
  );
}

/** To outside, house and ducts are brought to one pressure; what drives the leaks is both together. */
function BothPressures({ path, test }: { path: string; test: Draft }) {
  const { set } = useTrip();
  const keep = (key: "houseToOutsidePressurePa" | "ductToHousePressurePa") => (value: number | undefined) => {
    const { [key]: _, ...others } = test;
    const next: Draft = value === undefined ? others : { ...others, [key]: value };
    const [house, duct] = [numberAt(next, "houseToOutsidePressurePa"), numberAt(next, "ductToHousePressurePa")];
    const points = listAt(next, "points").map(({ ductPressurePa: _before, ...point }) =>
      house === undefined || duct === undefined ? point : { ...point, ductPressurePa: house + duct },
    );
    set(path, { ...next, points });
  };
  return (
    <div className={`${styles.pairs} ${styles.large}`}>
      <NumberAt path={`${path}/houseToOutsidePressurePa`} isSigned onNumber={keep("houseToOutsidePressurePa")} />
      <NumberAt
        path={`${path}/ductToHousePressurePa`}
        isSigned
        onNumber={keep("ductToHousePressurePa")}
        hint="0 when all is well."
      />
    </div>
  );
}

const SHEET_OF: Readonly<Record<string, { whole: string; part: string }>> = {
  "total-leakage": { whole: "total-leakage", part: "side-leakage" },
  "leakage-to-outside": { whole: "leakage-to-outside", part: "side-leakage-to-outside" },
};

/** The drawing and checklist of this very test, with the fan and gauge of the job. */
function SetUpLink({ test }: { test: Draft }) {
  const { jobId } = useTrip();
  const kind = textAt(test, "kind") ?? "";
  const side = textAt(test, "part");
  const isPart = side === "supply" || side === "return";
  const href = setupHref({
    job: jobId,
    test: SHEET_OF[kind]?.[isPart ? "part" : "whole"] ?? kind,
    direction: textAt(test, "direction"),
    side: isPart ? side : undefined,
    fan: textAt(test, "fanId"),
    gauge: textAt(test, "gaugeId"),
  });
  return (
    <p>
      <Link href={href} className={styles.footLink}>
        How to set it up: hoses and steps
      </Link>
    </p>
  );
}

const stageOptions = ["existing", "rough-in", "during-work", "final", "retest"].map((value) => ({
  value,
  label: choiceLabel("stage", value),
}));
const partOptions = ["supply", "return"].map((value) => ({ value, label: choiceLabel("part", value) }));
