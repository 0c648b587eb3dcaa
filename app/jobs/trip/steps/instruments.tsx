"use client";

import { Disclosure } from "#app/design/worked-out.tsx";
import { listAt, newId, textAt } from "../draft.ts";
import { EntryList } from "../entry-list.tsx";
import { ChoiceAt, FlagAt, NumberAt, TextAt } from "../fields.tsx";
import styles from "../trip.module.css";
import { useTrip } from "../trip-context.ts";

/** The contractor's own fan and gauge with their own papers; no maker's curve ships with the product. */
export function Instruments() {
  const { draft } = useTrip();
  const isUsed = (key: "fanId" | "gaugeId", id: string) => listAt(draft, "tests").some((test) => test[key] === id);
  return (
    <Disclosure title="Your test fan and gauge">
      <p>
        Copy the calibration from your own papers: for each flow restrictor and direction the numbers C and n of flow =
        C × pressureⁿ, and the span in which they hold.
      </p>
      <EntryList
        path="instruments/fans"
        headingLevel={2}
        title={(fan) => textAt(fan, "name") ?? "Test fan"}
        addLabel="Add a test fan"
        makeNew={(list) => ({
          id: newId(list, "fan"),
          name: "My test fan",
          calibrations: [{ restrictorId: "open", restrictorLabel: "open", direction: "pushing" }],
          needsFlowStraightenerWhenPulling: true,
          tapReference: { pushing: "air-around-fan", pulling: "duct-side-air" },
          restrictorSide: "inlet",
        })}
        keepReason={(fan) => (isUsed("fanId", String(fan.id)) ? "Used by a test" : undefined)}
      >
        {(path) => (
          <>
            <TextAt path={`${path}/name`} label="Name of the fan" />
            <EntryList
              path={`${path}/calibrations`}
              headingLevel={3}
              title={(row) => textAt(row, "restrictorLabel") ?? "Flow restrictor"}
              addLabel="Add a flow restrictor or direction"
              makeNew={(list) => ({
                restrictorId: newId(
                  list.map((row) => ({ id: row.restrictorId ?? "" })),
                  "restrictor",
                ),
                restrictorLabel: "",
                direction: "pushing",
              })}
            >
              {(at) => (
                <div className={styles.pairs}>
                  <TextAt path={`${at}/restrictorLabel`} />
                  <ChoiceAt path={`${at}/direction`} isRow />
                  <NumberAt path={`${at}/coefficient`} />
                  <NumberAt path={`${at}/exponent`} />
                  <NumberAt path={`${at}/minFanPressurePa`} />
                  <NumberAt path={`${at}/maxFanPressurePa`} />
                </div>
              )}
            </EntryList>
            <NumberAt path={`${path}/flowAccuracyShare`} />
            <FlagAt path={`${path}/needsFlowStraightenerWhenPulling`} />
            <TextAt path={`${path}/calibrationDueDate`} hint="As 2027-05-31." />
          </>
        )}
      </EntryList>
      <EntryList
        path="instruments/gauges"
        headingLevel={2}
        title={(gauge) => textAt(gauge, "name") ?? "Gauge"}
        addLabel="Add a gauge"
        makeNew={(list) => ({ id: newId(list, "gauge"), name: "My gauge" })}
        keepReason={(gauge) => (isUsed("gaugeId", String(gauge.id)) ? "Used by a test" : undefined)}
      >
        {(path) => (
          <>
            <TextAt path={`${path}/name`} label="Name of the gauge" />
            <NumberAt path={`${path}/accuracyPa`} />
            <NumberAt path={`${path}/resolutionPa`} />
            <TextAt path={`${path}/calibrationDueDate`} hint="As 2027-05-31." />
          </>
        )}
      </EntryList>
    </Disclosure>
  );
}
