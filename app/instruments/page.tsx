import type { Metadata } from "next";
import Link from "next/link";
import { Button, LinkButton } from "#app/design/button.tsx";
import { DataTable } from "#app/design/data-table.tsx";
import { EmptyState } from "#app/design/empty-state.tsx";
import { showAs } from "#app/jobs/session.ts";
import { can } from "#lib/access/can.ts";
import type { InstrumentRecord } from "#lib/store/repositories/instruments.ts";
import { retireInstrument } from "./actions.ts";
import { calibrationState, spanWords } from "./instrument-words.ts";
import styles from "./instruments.module.css";

export const metadata: Metadata = { title: "Instruments" };

/** The test fans and gauges of the organization, and which of them are due. */
export default async function InstrumentsPage() {
  const { list, organizationName, mayEdit } = await showAs("instrument.view", async ({ instruments }, actor) => ({
    list: await instruments.list(),
    organizationName: actor.organizationName,
    mayEdit: can(actor, "instrument.edit"),
  }));
  const today = new Date().toLocaleDateString("en-CA");
  const inUse = list.filter(({ isRetired }) => !isRetired);
  const retired = list.filter(({ isRetired }) => isRetired);
  return (
    <div className={styles.page}>
      <p className={styles.over}>
        <Link href="/jobs">{organizationName}</Link>
      </p>
      <h1>Instruments</h1>
      <p className={styles.lead}>
        Your test fans with their own calibration, and your gauges. A new job takes in what you have one of; of several
        you choose when you read.
      </p>
      {inUse.length === 0 ? (
        <EmptyState title="No instrument yet">
          Enter your fan once, from its calibration papers. Then every test knows which flow restrictor reads what.
        </EmptyState>
      ) : (
        <Instruments caption="Instruments in use" list={inUse} today={today} mayEdit={mayEdit} />
      )}
      {mayEdit ? (
        <div className={styles.actions}>
          <LinkButton href="/instruments/new-fan">Add a test fan</LinkButton>
          <LinkButton href="/instruments/new-gauge" variant="secondary">
            Add a gauge
          </LinkButton>
        </div>
      ) : null}
      {retired.length > 0 ? (
        <>
          <h2>Out of use</h2>
          <Instruments caption="Instruments out of use" list={retired} today={today} mayEdit={mayEdit} />
        </>
      ) : null}
    </div>
  );
}

function Instruments({
  caption,
  list,
  today,
  mayEdit,
}: {
  caption: string;
  list: readonly InstrumentRecord[];
  today: string;
  mayEdit: boolean;
}) {
  return (
    <DataTable
      caption={caption}
      isCaptionHidden
      isCardsWhenNarrow
      columns={[{ label: "Instrument" }, { label: "Reads" }, { label: "Calibration" }, { label: "Use" }]}
      rows={list.map((record) => {
        const { kind, instrument, isRetired } = record;
        return {
          id: instrument.id,
          cells: [
            mayEdit ? (
              <Link key="link" href={`/instruments/${instrument.id}`}>
                {instrument.name}
              </Link>
            ) : (
              instrument.name
            ),
            kind === "fan" ? spanWords(instrument) : "pressures",
            calibrationState(instrument, today),
            mayEdit ? (
              <form key="use" action={retireInstrument}>
                <input type="hidden" name="id" value={instrument.id} />
                <input type="hidden" name="isRetired" value={isRetired ? "no" : "yes"} />
                <Button type="submit" variant="quiet">
                  {isRetired ? "Use again" : "Take out of use"}
                </Button>
              </form>
            ) : isRetired ? (
              "out of use"
            ) : (
              "in use"
            ),
          ],
        };
      })}
    />
  );
}
