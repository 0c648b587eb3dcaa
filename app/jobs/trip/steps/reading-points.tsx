"use client";

import { useEffect, useState } from "react";
import { Button } from "#app/design/button.tsx";
import { ChoiceCards } from "#app/design/choice-cards.tsx";
import { type Draft, listAt, numberAt, textAt } from "../draft.ts";
import { NumberAt } from "../fields.tsx";
import styles from "../trip.module.css";
import { useTrip } from "../trip-context.ts";
import { restrictorOptions } from "./job-options.ts";
import { nextPressurePa } from "./next-pressure.ts";
import { ReadingRow } from "./reading-row.tsx";

/** The steps of a test as a table: ten readings at once are an expert's task. On a phone each row is a small form. */
export function ReadingPoints({ path, test }: { path: string; test: Draft }) {
  const { draft, set } = useTrip();
  const points = listAt(test, "points");
  const restrictors = restrictorOptions(draft, test);
  const [chosen, setChosen] = useState<"pressure" | "flow">();
  const [added, setAdded] = useState<number>();
  const hasFlows = points.some((point) => numberAt(point, "flowCfm") !== undefined);
  const shows = restrictors.length === 0 ? "flow" : (chosen ?? (hasFlows ? "flow" : "pressure"));
  const isToOutside = test.kind === "leakage-to-outside";
  const next = nextPressurePa(points);
  const fan = listAt(draft, "instruments/fans").find(({ id }) => id === test.fanId);
  const addStep = () => {
    const restrictorId = points.at(-1)?.restrictorId;
    set(`${path}/points`, [...points, restrictorId === undefined ? {} : { restrictorId }]);
    setAdded(points.length);
  };
  // Whoever adds a step is about to type its pressure.
  useEffect(() => {
    if (added !== undefined) document.getElementById(`${path}/points/${added}/ductPressurePa`)?.focus();
  }, [path, added]);
  return (
    <>
      {restrictors.length > 0 ? (
        <ChoiceCards
          label="What the gauge shows for the fan"
          name={`${path}-shows`}
          isRow
          choices={[
            { value: "pressure", label: "Fan pressure" },
            { value: "flow", label: "Flow" },
          ]}
          value={shows}
          onChange={(event) => setChosen(event.currentTarget.value === "flow" ? "flow" : "pressure")}
        />
      ) : null}
      <table className={styles.readings}>
        <caption>{isToOutside ? "What the fan showed" : "Steps of the test"}</caption>
        <thead>
          <tr>
            <th scope="col">Step</th>
            {isToOutside ? null : <th scope="col">Duct pressure</th>}
            {shows === "pressure" ? <th scope="col">Fan pressure</th> : null}
            {shows === "pressure" ? <th scope="col">Restrictor</th> : null}
            <th scope="col">Fan flow</th>
            <th scope="col">
              <span className={styles.hidden}>What to do with the step</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {points.map((point, index) => (
            <ReadingRow
              // biome-ignore lint/suspicious/noArrayIndexKey: a step of a test is known by its place
              key={`${points.length} ${index}`}
              path={path}
              test={test}
              index={index}
              point={point}
              shows={shows}
              restrictors={restrictors}
            />
          ))}
        </tbody>
      </table>
      {restrictors.length > 0 ? null : (
        <p className={styles.small}>
          {fan
            ? `${textAt(fan, "name") ?? "This fan"} has no calibration for ${test.direction === "pulling" ? "pulling" : "pushing"}: enter the flow that the gauge shows, or its calibration below.`
            : "To enter fan pressures instead of flows, enter your test fan with its calibration below and name it in this test."}
        </p>
      )}
      {isToOutside ? null : (
        <p>
          <Button variant="secondary" onClick={addStep}>
            {next === undefined ? "Add a step" : `Next step: about ${next} Pa`}
          </Button>
        </p>
      )}
    </>
  );
}

/** The pairs of a Delta-Q test. */
export function DeltaQPoints({ path }: { path: string }) {
  const { draft, set } = useTrip();
  const points = listAt(draft, `${path}/points`);
  return (
    <>
      <table className={styles.readings}>
        <caption>Pressures of the test, five at least</caption>
        <thead>
          <tr>
            <th scope="col">Step</th>
            <th scope="col">House to outside</th>
            <th scope="col">Flow, on minus off</th>
          </tr>
        </thead>
        <tbody>
          {points.map((_, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a step of a test is known by its place
            <tr key={index}>
              <th scope="row">{index + 1}</th>
              <td data-label="House to outside">
                <NumberAt
                  path={`${path}/points/${index}/envelopePressurePa`}
                  label={`House to outside at step ${index + 1}, in pascals`}
                  isLabelHidden
                  isSigned
                />
              </td>
              <td data-label="Flow, on minus off">
                <NumberAt
                  path={`${path}/points/${index}/deltaFlowCfm`}
                  label={`Flow with the air handler on minus off at step ${index + 1}, in cubic feet per minute`}
                  isLabelHidden
                  isSigned
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        <Button variant="secondary" onClick={() => set(`${path}/points`, [...points, {}])}>
          Add a step
        </Button>
      </p>
    </>
  );
}
