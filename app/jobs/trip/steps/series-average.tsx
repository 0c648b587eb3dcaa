"use client";

import { useEffect, useState } from "react";
import { Button } from "#app/design/button.tsx";
import { TextField } from "#app/design/text-field.tsx";
import { formatNumber } from "#lib/units/format.ts";
import styles from "../trip.module.css";
import { averageOfSeries, type SeriesAverage } from "./series.ts";

/** What a series is of, and the unit of its field. */
export interface SeriesQuestion {
  id: string;
  label: string;
  unit: string;
}

/**
 * Averaging as one does it with a gauge that jumps: start the clock, type what it shows again and again, and take the
 * mean of each series over to the step.
 */
export function SeriesAverages({
  questions,
  onTake,
}: {
  questions: readonly SeriesQuestion[];
  onTake: (means: Readonly<Record<string, number>>) => void;
}) {
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [startedAt, setStartedAt] = useState<number>();
  const seconds = useSeconds(startedAt);
  const averages = questions.flatMap(({ id }) => {
    const average = averageOfSeries(typed[id] ?? "");
    return average ? [[id, average] as const] : [];
  });
  const of = (id: string) => averages.find(([each]) => each === id)?.[1];
  return (
    <div className={styles.series}>
      <p className={styles.small}>
        Type what the gauge shows every few seconds, with a space between.{" "}
        <span role="timer">{startedAt === undefined ? "" : `${seconds} s`}</span>
      </p>
      {questions.map(({ id, label, unit }) => {
        const average = of(id);
        return (
          <TextField
            key={id}
            id={id}
            label={label}
            inputMode="text"
            autoComplete="off"
            value={typed[id] ?? ""}
            onChange={(event) => {
              const text = event.currentTarget.value;
              setStartedAt((before) => before ?? Date.now());
              setTyped((before) => ({ ...before, [id]: text }));
            }}
            note={average ? sayAverage(average, unit) : undefined}
          />
        );
      })}
      <Button
        variant="secondary"
        disabled={averages.length === 0}
        onClick={() => onTake(Object.fromEntries(averages.map(([id, { mean }]) => [id, mean])))}
      >
        {averages.length > 1 ? "Use the averages" : "Use the average"}
      </Button>
    </div>
  );
}

/** What the series comes to, and what in it looks wrong. */
function sayAverage({ count, mean, lowest, highest, hasBothSigns, unread }: SeriesAverage, unit: string): string {
  return [
    `${count} readings, average ${formatNumber(mean, { significantDigits: 4 })} ${unit}, from ${formatNumber(lowest)} to ${formatNumber(highest)}.`,
    ...(hasBothSigns ? ["Some are above zero and some below: look whether a minus is missing."] : []),
    ...(unread.length > 0 ? [`Not a number: ${unread.join(" ")}`] : []),
  ].join(" ");
}

/** Whole seconds since a moment; stands still until there is one. */
function useSeconds(startedAt: number | undefined): number {
  const [seconds, setSeconds] = useState(0);
  useEffect(() => {
    if (startedAt === undefined) return;
    const tick = () => setSeconds(Math.floor((Date.now() - startedAt) / 1000));
    const timer = setInterval(tick, 1000);
    return () => clearInterval(timer);
  }, [startedAt]);
  return seconds;
}
