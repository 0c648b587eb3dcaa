"use client";

import { Button } from "#app/design/button.tsx";
import { type Draft, listAt, readAt, textAt } from "../draft.ts";
import { ChoiceAt, NumberAt } from "../fields.tsx";
import styles from "../trip.module.css";
import { useTrip } from "../trip-context.ts";
import { restrictorOptions } from "./job-options.ts";

/** The steps of a test as a table: ten readings at once are an expert's task. On a phone each row is a small form. */
export function ReadingPoints({ path, test }: { path: string; test: Draft }) {
  const { draft, set } = useTrip();
  const points = listAt(test, "points");
  const fanId = textAt(test, "fanId");
  const restrictors = restrictorOptions(draft, fanId);
  const hasFan = restrictors.length > 0;
  return (
    <>
      <table className={styles.readings}>
        <caption>Steps of the test</caption>
        <thead>
          <tr>
            <th scope="col">Step</th>
            <th scope="col">Duct pressure</th>
            {hasFan ? <th scope="col">Fan pressure</th> : null}
            {hasFan ? <th scope="col">Restrictor</th> : null}
            <th scope="col">Fan flow</th>
            <th scope="col">
              <span className={styles.hidden}>What to do with the step</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {points.map((point, index) => {
            const at = `${path}/points/${index}`;
            const number = index + 1;
            const isDoubtful = readAt(point, "isDoubtful") === true;
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: a step of a test is known by its place
              <tr key={`${points.length} ${index}`}>
                <th scope="row">{number}</th>
                <td data-label="Duct pressure">
                  <NumberAt
                    path={`${at}/ductPressurePa`}
                    label={`Duct pressure at step ${number}, in pascals`}
                    hint={null}
                    isLabelHidden
                  />
                </td>
                {hasFan ? (
                  <td data-label="Fan pressure">
                    <NumberAt
                      path={`${at}/fanPressurePa`}
                      label={`Fan pressure at step ${number}, in pascals`}
                      isLabelHidden
                    />
                  </td>
                ) : null}
                {hasFan ? (
                  <td data-label="Restrictor">
                    <ChoiceAt
                      path={`${at}/restrictorId`}
                      label={`Flow restrictor at step ${number}`}
                      options={restrictors}
                      unknownLabel="–"
                      isLabelHidden
                    />
                  </td>
                ) : null}
                <td data-label="Fan flow">
                  <NumberAt
                    path={`${at}/flowCfm`}
                    label={`Fan flow at step ${number}, in cubic feet per minute`}
                    isLabelHidden
                  />
                </td>
                <td className={styles.rowActions}>
                  <Button
                    variant="quiet"
                    aria-pressed={isDoubtful}
                    onClick={() => set(`${at}/isDoubtful`, isDoubtful ? undefined : true)}
                  >
                    {isDoubtful ? "Doubtful ✓" : "Doubtful"}
                    <span className={styles.hidden}>, step {number}</span>
                  </Button>
                  {points.length > 1 ? (
                    <Button
                      variant="quiet"
                      onClick={() =>
                        set(
                          `${path}/points`,
                          points.filter((_, each) => each !== index),
                        )
                      }
                    >
                      Remove
                      <span className={styles.hidden}> step {number}</span>
                    </Button>
                  ) : null}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <p>
        <Button variant="secondary" onClick={() => set(`${path}/points`, [...points, {}])}>
          Add a step
        </Button>
      </p>
      {hasFan ? null : (
        <p className={styles.small}>
          To enter fan pressures instead of flows, enter your test fan with its calibration below and name it in this
          test.
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
                />
              </td>
              <td data-label="Flow, on minus off">
                <NumberAt
                  path={`${path}/points/${index}/deltaFlowCfm`}
                  label={`Flow with the air handler on minus off at step ${index + 1}, in cubic feet per minute`}
                  isLabelHidden
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
