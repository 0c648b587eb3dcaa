"use client";

import { Button } from "#app/design/button.tsx";
import { type Draft, listAt, newId, textAt } from "../draft.ts";
import { EntryList } from "../entry-list.tsx";
import { choiceLabel } from "../field-words.ts";
import { ChoiceAt, FlagAt, NumberAt, TextAt } from "../fields.tsx";
import styles from "../trip.module.css";
import { useTrip } from "../trip-context.ts";

const OTHER_DIRECTION: Readonly<Record<string, string>> = { pushing: "pulling", pulling: "pushing" };

const TAP_OPTIONS = [
  { value: "air-around-fan", label: "The air around the fan" },
  { value: "duct-side-air", label: "The air on the duct side" },
];
const SIDE_OPTIONS = [
  { value: "inlet", label: "The inlet, where air enters" },
  { value: "outlet", label: "The outlet, where air leaves" },
];

/** What a test fan is known by: its calibration for each restrictor and direction, its tap, its restrictor's side. */
export function FanFields({ path, headingLevel = 3 }: { path: string; headingLevel?: 2 | 3 }) {
  const { draft, set } = useTrip();
  const rows = listAt(draft, `${path}/calibrations`);
  const isThere = (row: Draft, direction: string) =>
    rows.some((other) => other.restrictorId === row.restrictorId && other.direction === direction);
  const missing = rows.flatMap((row) => {
    const direction = OTHER_DIRECTION[textAt(row, "direction") ?? ""];
    if (direction === undefined || isThere(row, direction)) return [];
    const { restrictorId = "", restrictorLabel = "" } = row;
    return [{ restrictorId, restrictorLabel, direction }];
  });
  return (
    <>
      <div className={styles.pairs}>
        <TextAt path={`${path}/name`} label="Name of the fan" />
        <TextAt path={`${path}/serialNumber`} />
        <TextAt path={`${path}/calibrationDate`} hint="As 2026-05-31." />
        <TextAt path={`${path}/calibrationDueDate`} hint="As 2028-05-31. A test after that day says so." />
      </div>
      <p className={styles.small}>
        Copy the calibration from your own papers: for each flow restrictor and direction the numbers C and n of flow =
        C × pressureⁿ, and the span of fan pressure in which they hold.
      </p>
      <EntryList
        path={`${path}/calibrations`}
        headingLevel={headingLevel}
        title={calibrationName}
        addLabel="Add a flow restrictor"
        makeNew={(list) => ({
          restrictorId: newId(
            list.map((row) => ({ id: row.restrictorId ?? "" })),
            "restrictor",
          ),
          restrictorLabel: `Restrictor ${list.length}`,
          direction: textAt(list.at(-1) ?? {}, "direction") ?? "pushing",
        })}
      >
        {(at) => (
          <div className={styles.pairs}>
            <TextAt path={`${at}/restrictorLabel`} />
            <ChoiceAt path={`${at}/direction`} isRow hint={null} />
            <NumberAt path={`${at}/coefficient`} hint="C of flow = C × pressureⁿ." />
            <NumberAt path={`${at}/exponent`} hint="n, near 0.5." />
            <NumberAt path={`${at}/minFanPressurePa`} />
            <NumberAt path={`${at}/maxFanPressurePa`} />
          </div>
        )}
      </EntryList>
      {missing.length > 0 ? (
        <p>
          <Button variant="secondary" onClick={() => set(`${path}/calibrations`, [...rows, ...missing])}>
            Add the same restrictors for the other direction
          </Button>
        </p>
      ) : null}
      <NumberAt path={`${path}/flowAccuracyShare`} />
      <FlagAt path={`${path}/needsFlowStraightenerWhenPulling`} />
      <div className={styles.pairs}>
        <ChoiceAt
          path={`${path}/tapReference/pushing`}
          label="Pushing, the flow tap is read against"
          options={TAP_OPTIONS}
          hint={null}
          isRequired
        />
        <ChoiceAt
          path={`${path}/tapReference/pulling`}
          label="Pulling, the flow tap is read against"
          options={TAP_OPTIONS}
          hint={null}
          isRequired
        />
        <ChoiceAt path={`${path}/restrictorSide`} options={SIDE_OPTIONS} hint={null} isRequired />
      </div>
    </>
  );
}

/** What a gauge is known by. */
export function GaugeFields({ path }: { path: string }) {
  return (
    <div className={styles.pairs}>
      <TextAt path={`${path}/name`} label="Name of the gauge" />
      <TextAt path={`${path}/serialNumber`} />
      <NumberAt path={`${path}/accuracyShare`} />
      <NumberAt path={`${path}/accuracyPa`} />
      <NumberAt path={`${path}/resolutionPa`} />
      <TextAt path={`${path}/calibrationDate`} hint="As 2026-05-31." />
      <TextAt path={`${path}/calibrationDueDate`} hint="As 2027-05-31. A test after that day says so." />
    </div>
  );
}

function calibrationName(row: Draft): string {
  const label = textAt(row, "restrictorLabel") ?? "Flow restrictor";
  const direction = textAt(row, "direction");
  return direction ? `${label}, ${choiceLabel("direction", direction).toLowerCase()}` : label;
}
