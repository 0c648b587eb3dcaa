import type { Metadata } from "next";
import Link from "next/link";
import { Notice } from "#app/design/notice.tsx";
import { showAs } from "#app/jobs/session.ts";
import type { Draft } from "#app/jobs/trip/draft.ts";
import { jobFieldSpecs } from "#app/jobs/trip/field-spec.ts";
import { NEW_FAN, NEW_GAUGE } from "#app/jobs/trip/steps/new-instruments.ts";
import { unitSystem } from "#app/units/unit-system.ts";
import { InstrumentEditor } from "../instrument-editor.tsx";
import styles from "../instruments.module.css";

export const metadata: Metadata = { title: "Instrument" };

const NEW = { "new-fan": { kind: "fan", first: NEW_FAN }, "new-gauge": { kind: "gauge", first: NEW_GAUGE } } as const;
const isNew = (id: string): id is keyof typeof NEW => Object.hasOwn(NEW, id);

/** One instrument in its fields: a new one, or one to change. */
export default async function InstrumentPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  const record = await showAs("instrument.edit", async ({ instruments }) =>
    isNew(id) ? undefined : await instruments.find(id),
  );
  const shared = { specs: jobFieldSpecs(), units: await unitSystem() };
  const title = record?.instrument.name ?? (id === "new-gauge" ? "A gauge" : "A test fan");
  return (
    <div className={styles.page}>
      <p className={styles.over}>
        <Link href="/instruments">Instruments</Link>
      </p>
      <h1>{title}</h1>
      {record?.instrument.isInvented ? (
        <Notice kind="info" title="This instrument is invented">
          Its curves are round numbers for trying things out. No fan or gauge like it was ever made.
        </Notice>
      ) : null}
      {record ? (
        <InstrumentEditor
          kind={record.kind}
          id={record.instrument.id}
          onUpdatedAt={record.updatedAt.toISOString()}
          first={JSON.parse(JSON.stringify(record.instrument)) as Draft}
          {...shared}
        />
      ) : (
        <InstrumentEditor {...NEW[id === "new-gauge" ? "new-gauge" : "new-fan"]} {...shared} />
      )}
    </div>
  );
}
