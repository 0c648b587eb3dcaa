"use client";

import { type ReactNode, useState } from "react";
import { Button } from "#app/design/button.tsx";
import { DataTable } from "#app/design/data-table.tsx";
import { FileField } from "#app/design/file-field.tsx";
import { type FieldProblem, InputProblem } from "#lib/errors/input-problem.ts";
import type { BilledField, BillFile } from "#lib/exchange/bills/billed-use.ts";
import type { Bill } from "#lib/job/energy-use.ts";
import { formatNumber } from "#lib/units/format.ts";
import { type Json, listAt } from "../draft.ts";
import styles from "../trip.module.css";
import { useTrip } from "../trip-context.ts";

const PATH = "energy/bills";
const MOST_ERRORS_SHOWN = 5;

const COLUMNS: readonly { field: BilledField; label: string }[] = [
  { field: "electricityKWh", label: "Electricity, kWh" },
  { field: "naturalGasTherms", label: "Natural gas, therms" },
  { field: "propaneGallons", label: "Propane, gal" },
  { field: "fuelOilGallons", label: "Heating oil, gal" },
];

/** Reads a file where it is chosen: nothing is sent but the bills that are taken over. */
async function billsOf(file: File): Promise<BillFile> {
  const { readBillFile } = await import("#lib/exchange/bills/read-bill-file.ts");
  const { timeZone } = new Intl.DateTimeFormat().resolvedOptions();
  return readBillFile(await file.text(), { timeZone });
}

const countOf = (bills: number): string => `${bills} ${bills === 1 ? "bill" : "bills"}`;

/** Bills from a file: chosen, shown as they were read, and taken over with a press. */
export function BillsFromFile({ onTaken }: { onTaken: () => void }) {
  const { draft, set } = useTrip();
  const [read, setRead] = useState<BillFile>();
  const [problems, setProblems] = useState<readonly FieldProblem[]>([]);
  /** What is going on, or was done. */
  const [word, setWord] = useState<string>();
  const entered = listAt(draft, PATH).length;
  const choose = async (file: File | undefined) => {
    if (!file) return;
    setProblems([]);
    setRead(undefined);
    setWord("Reading the file…");
    try {
      const bills = await billsOf(file);
      setRead(bills);
      setWord(`${countOf(bills.bills.length)} read. Look them over, then take them.`);
    } catch (thrown) {
      if (!(thrown instanceof InputProblem)) throw thrown;
      setWord(undefined);
      setProblems(thrown.errors);
    }
  };
  const take = ({ bills }: BillFile) => {
    set(PATH, bills as unknown as Json);
    onTaken();
    setWord(`${countOf(bills.length)} taken over.`);
    setRead(undefined);
  };
  const leave = () => {
    setRead(undefined);
    setWord(undefined);
  };
  return (
    <>
      <FileField
        id="bill-file"
        label="Bills from a file"
        hint="Green Button (XML) from the utility, or a CSV with the columns start, end, amount, unit, estimated; unit is kWh, therm, gal propane or gal oil."
        error={problems.length > 0 ? errorOf(problems) : undefined}
        note={word}
        isOptional
        accept=".xml,.csv,text/xml,application/xml,text/csv"
        onChange={(event) => void choose(event.currentTarget.files?.[0])}
      />
      {read ? (
        <>
          {read.notes.length > 0 ? (
            <ul>
              {read.notes.map((note) => (
                <li key={note}>{note}</li>
              ))}
            </ul>
          ) : null}
          <BillTable bills={read.bills} />
          <p>
            <Button variant="secondary" onClick={() => take(read)}>
              {entered > 0 ? `Replace ${countOf(entered)} by these` : `Take over ${countOf(read.bills.length)}`}
            </Button>{" "}
            <Button variant="quiet" onClick={leave}>
              Leave them
            </Button>
          </p>
        </>
      ) : null}
    </>
  );
}

function errorOf(problems: readonly FieldProblem[]): ReactNode {
  const more = problems.length - MOST_ERRORS_SHOWN;
  return (
    <>
      Nothing was taken from the file.
      {problems.slice(0, MOST_ERRORS_SHOWN).map(({ pointer, detail, fix }) => (
        <span key={`${pointer} ${detail}`}>
          <br />
          {detail}. {fix}
        </span>
      ))}
      {more > 0 ? (
        <>
          <br />
          {more} more.
        </>
      ) : null}
    </>
  );
}

function BillTable({ bills }: { bills: readonly Bill[] }) {
  const columns = COLUMNS.filter(({ field }) => bills.some((bill) => bill[field] !== undefined));
  return (
    <DataTable
      caption="Bills in the file"
      columns={[
        { label: "First day" },
        { label: "Last day" },
        ...columns.map(({ label }) => ({ label, isNumeric: true })),
      ]}
      rows={bills.map((bill, index) => ({
        id: String(index),
        cells: [
          <Day key="first" date={bill.startDate} />,
          <span key="last">
            <Day date={bill.endDate} />
            {bill.isEstimated ? ", estimated" : ""}
          </span>,
          ...columns.map(({ field }) =>
            bill[field] === undefined ? "" : formatNumber(bill[field], { significantDigits: 4 }),
          ),
        ],
      }))}
    />
  );
}

const Day = ({ date }: { date: string }) => <span className={styles.day}>{date}</span>;
