"use client";

import { useState } from "react";
import { Button } from "#app/design/button.tsx";
import { FileField } from "#app/design/file-field.tsx";
import { InputProblem } from "#lib/errors/input-problem.ts";
import type { Json } from "../draft.ts";
import { textAt } from "../draft.ts";
import { useTrip } from "../trip-context.ts";

const PATH = "house/weatherYear";

/** Reads a file where it is chosen: nothing is sent but the year it gives, which becomes part of the job. */
async function yearOf(file: File): Promise<{ year: Json; notes: readonly string[] }> {
  const [{ readWeatherFile }, { packWeatherYear }] = await Promise.all([
    import("#lib/exchange/read-weather-file.ts"),
    import("#lib/exchange/weather/pack-weather-year.ts"),
  ]);
  const { climate, notes } = await readWeatherFile([await file.text()]);
  return { year: packWeatherYear(climate) as unknown as Json, notes: notes.map(({ what }) => what) };
}

/** A weather file of one's own in the place of the station's year. */
export function OwnWeather() {
  const { draft, set } = useTrip();
  const [error, setError] = useState<string>();
  const [notes, setNotes] = useState<readonly string[]>([]);
  const name = textAt(draft, `${PATH}/title`);
  const take = async (file: File | undefined) => {
    if (!file) return;
    setError(undefined);
    setNotes([]);
    try {
      const read = await yearOf(file);
      setNotes(read.notes);
      set(PATH, read.year);
    } catch (thrown) {
      if (!(thrown instanceof InputProblem)) throw thrown;
      const [problem] = thrown.errors;
      setError(`${problem!.detail}. ${problem!.fix}`);
    }
  };
  return (
    <>
      <FileField
        id={PATH}
        label="Your own weather file"
        hint="EPW or TMY3, one line an hour. It replaces the weather of the station."
        note={
          name === undefined ? undefined : (
            <span role="status">
              In use: {name}. {notes.join(" ")}
            </span>
          )
        }
        error={error}
        isOptional
        accept=".epw,.csv,text/csv,text/plain"
        onChange={(event) => void take(event.currentTarget.files?.[0])}
      />
      {name === undefined ? null : (
        <Button variant="quiet" onClick={() => set(PATH, undefined)}>
          Use the station again
        </Button>
      )}
    </>
  );
}
