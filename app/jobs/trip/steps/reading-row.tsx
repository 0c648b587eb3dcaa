"use client";

import { useState } from "react";
import { Button } from "#app/design/button.tsx";
import { formatNumber } from "#lib/units/format.ts";
import { unitText } from "#lib/units/unit-text.ts";
import { type Draft, listAt, readAt } from "../draft.ts";
import { ChoiceAt, NumberAt } from "../fields.tsx";
import type { LiveStep } from "../live-readings.ts";
import styles from "../trip.module.css";
import { useTrip } from "../trip-context.ts";
import { SeriesAverages, type SeriesQuestion } from "./series-average.tsx";

/** Nearer than this nobody can read a gauge. */
const ON_THE_LINE_PERCENT = 0.2;

/** One step: what was read, the flow it gives, and where it lies beside the line through all steps. */
export function ReadingRow({
  path,
  test,
  index,
  point,
  shows,
  restrictors,
}: {
  path: string;
  test: Draft;
  index: number;
  point: Draft;
  shows: "pressure" | "flow";
  restrictors: readonly { value: string; label: string }[];
}) {
  const { set, readings, units } = useTrip();
  const [isAveraging, setIsAveraging] = useState(false);
  // What an average brings is not typed, so the fields are made anew with it.
  const [taken, setTaken] = useState(0);
  const at = `${path}/points/${index}`;
  const number = index + 1;
  const points = listAt(test, "points");
  const isDoubtful = readAt(point, "isDoubtful") === true;
  const isToOutside = test.kind === "leakage-to-outside";
  const step = readings[String(test.id)]?.steps[index] ?? null;
  const say = unitText(units);
  const questions: SeriesQuestion[] = [
    ...(isToOutside ? [] : [{ id: "ductPressurePa", label: "Duct pressures", unit: "Pa" }]),
    ...(shows === "pressure" ? [{ id: "fanPressurePa", label: "Fan pressures", unit: "Pa" }] : []),
  ];
  return (
    <>
      <tr key={taken}>
        <th scope="row">{number}</th>
        {isToOutside ? null : (
          <td data-label="Duct pressure">
            <NumberAt
              path={`${at}/ductPressurePa`}
              label={`Duct pressure at step ${number}, in pascals`}
              hint={null}
              isLabelHidden
              isSigned
            />
          </td>
        )}
        {shows === "pressure" ? (
          <>
            <td data-label="Fan pressure">
              <NumberAt
                path={`${at}/fanPressurePa`}
                label={`Fan pressure at step ${number}, in pascals`}
                isLabelHidden
              />
            </td>
            <td data-label="Restrictor">
              <ChoiceAt
                path={`${at}/restrictorId`}
                label={`Flow restrictor at step ${number}`}
                options={restrictors}
                unknownLabel="–"
                isLabelHidden
              />
            </td>
          </>
        ) : null}
        <td data-label="Fan flow" className={shows === "pressure" ? styles.flowRead : styles.flow}>
          {shows === "pressure" ? (
            <output className={styles.reads}>{step ? say.quantity(step.flowCfm, "cfm") : "–"}</output>
          ) : (
            <NumberAt
              path={`${at}/flowCfm`}
              label={`Fan flow at step ${number}, in cubic feet per minute`}
              isLabelHidden
            />
          )}
          {step?.aboveLineCfm === undefined ? null : <span className={styles.small}>{beside(step)}</span>}
        </td>
        <td className={styles.rowActions}>
          <Button
            variant="quiet"
            aria-pressed={isDoubtful}
            onClick={() => set(`${at}/isDoubtful`, isDoubtful ? undefined : true)}
          >
            {isDoubtful ? "Doubtful ✓" : "Mark doubtful"}
            <span className={styles.hidden}>, step {number}</span>
          </Button>
          {questions.length > 0 ? (
            <Button variant="quiet" aria-expanded={isAveraging} onClick={() => setIsAveraging(!isAveraging)}>
              Average<span className={styles.hidden}> a series for step {number}</span>
            </Button>
          ) : null}
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
      {isAveraging ? (
        <tr>
          <td colSpan={6} className={styles.seriesCell}>
            <SeriesAverages
              questions={questions.map((question) => ({ ...question, label: `${question.label} at step ${number}` }))}
              onTake={(means) => {
                set(at, { ...point, ...means });
                setTaken(taken + 1);
                setIsAveraging(false);
              }}
            />
          </td>
        </tr>
      ) : null}
    </>
  );
}

/** Where a step lies beside the line, in words. */
function beside({ aboveLineCfm = 0, flowCfm }: LiveStep): string {
  const percent = (100 * Math.abs(aboveLineCfm)) / flowCfm;
  if (percent < ON_THE_LINE_PERCENT) return "on the line";
  return `${formatNumber(percent, { significantDigits: 2 })}% ${aboveLineCfm > 0 ? "above" : "below"} the line`;
}
