"use client";

import { useState } from "react";
import { FileField } from "#app/design/file-field.tsx";
import { InputProblem } from "#lib/errors/input-problem.ts";
import type { Bill } from "#lib/job/energy-use.ts";
import { type Json, listAt } from "../draft.ts";
import { useTrip } from "../trip-context.ts";

const PATH = "energy/bills";

/** Daily temperatures from a file: each bill entered is told how warm its days were. Nothing else of it is kept. */
export function TemperaturesFromFile({ onTaken }: { onTaken: () => void }) {
  const { draft, set } = useTrip();
  const [word, setWord] = useState<string>();
  const [error, setError] = useState<string>();
  const bills = listAt(draft, PATH);
  if (bills.length === 0) return null;
  const choose = async (file: File | undefined) => {
    if (!file) return;
    setError(undefined);
    setWord("Reading the file…");
    try {
      const { readDailyTemperatures, withMeanOutdoor } = await import("#lib/exchange/bills/daily-temperatures-csv.ts");
      const dated = bills as unknown as readonly Bill[];
      const told = withMeanOutdoor(dated, readDailyTemperatures(await file.text()));
      set(PATH, told.bills as unknown as Json);
      onTaken();
      setWord(`${told.toldCount} of ${bills.length} bills tell now how warm their days were.`);
    } catch (thrown) {
      if (!(thrown instanceof InputProblem)) throw thrown;
      setWord(undefined);
      setError(thrown.errors.map(({ detail, fix }) => `${detail}. ${fix}`).join(" "));
    }
  };
  return (
    <FileField
      id="temperature-file"
      label="Daily temperatures from a file"
      hint="A CSV of a weather station with the columns date and meanF or meanC. With them bills tell surely, and later bills what was saved."
      error={error}
      note={word}
      isOptional
      accept=".csv,text/csv"
      onChange={(event) => void choose(event.currentTarget.files?.[0])}
    />
  );
}
