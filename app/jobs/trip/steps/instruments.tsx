"use client";

import Link from "next/link";
import { Button } from "#app/design/button.tsx";
import { Notice } from "#app/design/notice.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import { type Draft, listAt, newId, textAt } from "../draft.ts";
import { EntryList } from "../entry-list.tsx";
import { useTrip } from "../trip-context.ts";
import { FanFields, GaugeFields } from "./instrument-fields.tsx";
import { NEW_FAN, NEW_GAUGE } from "./new-instruments.ts";
import { type OwnInstruments, offeredInstruments } from "./own-instruments.ts";

/** The instruments of this job: taken in from the organization's, or entered here. No maker's curve ships with the product. */
export function Instruments({ own }: { own: OwnInstruments }) {
  const { draft } = useTrip();
  const isUsed = (key: "fanId" | "gaugeId", id: string) => listAt(draft, "tests").some((test) => test[key] === id);
  return (
    <>
      <Offers own={own} />
      <Disclosure title="Test fan and gauge of this job">
        <p>
          What you enter here is known to this job alone. For every job, keep it with{" "}
          <Link href="/instruments">your instruments</Link>.
        </p>
        <EntryList
          path="instruments/fans"
          headingLevel={2}
          title={(fan) => textAt(fan, "name") ?? "Test fan"}
          addLabel="Add a test fan"
          makeNew={(list) => ({ id: newId(list, "fan"), ...NEW_FAN })}
          keepReason={(fan) => (isUsed("fanId", String(fan.id)) ? "Used by a test" : undefined)}
        >
          {(path) => <FanFields path={path} />}
        </EntryList>
        <EntryList
          path="instruments/gauges"
          headingLevel={2}
          title={(gauge) => textAt(gauge, "name") ?? "Gauge"}
          addLabel="Add a gauge"
          makeNew={(list) => ({ id: newId(list, "gauge"), ...NEW_GAUGE })}
          keepReason={(gauge) => (isUsed("gaugeId", String(gauge.id)) ? "Used by a test" : undefined)}
        >
          {(path) => <GaugeFields path={path} />}
        </EntryList>
      </Disclosure>
    </>
  );
}

/** What the organization has and this job does not, or has in a newer state. Nothing is taken in silently. */
function Offers({ own }: { own: OwnInstruments }) {
  const { draft, set } = useTrip();
  const offers = offeredInstruments(own, draft);
  if (offers.length === 0) return null;
  return (
    <Notice
      kind="info"
      word="Yours"
      title={offers.length === 1 ? "One of your instruments" : "Your instruments"}
      actions={offers.map(({ list, instrument, isNewer }) => {
        const name = textAt(instrument, "name") ?? "instrument";
        const taken: readonly Draft[] = listAt(draft, `instruments/${list}`);
        return (
          <Button
            key={String(instrument.id)}
            variant="secondary"
            onClick={() =>
              set(
                `instruments/${list}`,
                isNewer ? taken.map((each) => (each.id === instrument.id ? instrument : each)) : [...taken, instrument],
              )
            }
          >
            {isNewer ? `Take the newer calibration of ${name}` : `Use ${name}`}
          </Button>
        );
      })}
    >
      <p>A job keeps an instrument as it was when it was taken in, so that its readings can be read again later.</p>
    </Notice>
  );
}
