"use client";

import { useCallback, useMemo, useState, useTransition } from "react";
import { SaveForm } from "#app/design/save-form.tsx";
import { type Draft, type Json, readAt, writeAt } from "#app/jobs/trip/draft.ts";
import type { FieldSpecs } from "#app/jobs/trip/field-spec.ts";
import { missingFields } from "#app/jobs/trip/missing.ts";
import { FanFields, GaugeFields } from "#app/jobs/trip/steps/instrument-fields.tsx";
import { starPathOf, TripContext } from "#app/jobs/trip/trip-context.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { type InstrumentKind, saveInstrument } from "./actions.ts";

const PLACES: Readonly<Record<InstrumentKind, string>> = {
  fan: "instruments/fans/0",
  gauge: "instruments/gauges/0",
};
const NO_READINGS = {};

/** One instrument in the very fields that a job has for it, so that what is entered here is what a job takes in. */
export function InstrumentEditor({
  kind,
  id,
  onUpdatedAt,
  first,
  specs,
  units,
}: {
  kind: InstrumentKind;
  /** Absent: a new one. */
  id?: string;
  onUpdatedAt?: string;
  first: Draft;
  specs: FieldSpecs;
  units: UnitSystem;
}) {
  const place = PLACES[kind];
  const [draft, setDraft] = useState<Draft>(() => startOf(kind, first));
  const [unreadable, setUnreadableTexts] = useState<Readonly<Record<string, string>>>({});
  const [problems, setProblems] = useState<readonly { fieldId: string; text: string }[]>([]);
  const [conflict, setConflict] = useState<string>();
  const [isSaving, startSaving] = useTransition();
  const set = useCallback((path: string, value: Json | undefined) => {
    setDraft((before) => writeAt(before, path, value));
  }, []);
  const setUnreadable = useCallback((path: string, text: string | undefined) => {
    setUnreadableTexts(({ [path]: _, ...others }) => (text === undefined ? others : { ...others, [path]: text }));
  }, []);
  const context = useMemo(
    () => ({
      jobId: "",
      draft,
      units,
      answer: null,
      readings: NO_READINGS,
      set,
      setUnreadable,
      unreadable,
      specOf: (path: string) => specs[starPathOf(path)] ?? { title: path, isRequired: false },
      errorAt: (path: string) => problems.find(({ fieldId }) => fieldId === path)?.text,
    }),
    [draft, units, set, setUnreadable, unreadable, specs, problems],
  );
  const save = () =>
    startSaving(async () => {
      const unread = Object.keys(unreadable).map((path) => ({
        fieldId: path,
        text: "Enter a number, such as 1,250 or 24.8",
      }));
      if (unread.length > 0) {
        setProblems(unread);
        return;
      }
      const document = readAt(draft, place) as Draft;
      const reply = await saveInstrument({ kind, document, ...(id && onUpdatedAt ? { id, onUpdatedAt } : {}) });
      setProblems(
        missingFields(reply.problems, units).map(({ path, text }) => ({ fieldId: `${place}/${path}`, text })),
      );
      setConflict(reply.conflict);
    });
  return (
    <TripContext value={context}>
      <SaveForm
        problems={problems}
        refusal={conflict}
        isSaving={isSaving}
        saveLabel={id ? "Save the change" : "Keep this instrument"}
        leaveTo="/instruments"
        onSave={save}
      >
        {kind === "fan" ? <FanFields path={place} headingLevel={2} /> : <GaugeFields path={place} />}
      </SaveForm>
    </TripContext>
  );
}

const startOf = (kind: InstrumentKind, first: Draft): Draft => ({
  instruments: kind === "fan" ? { fans: [first] } : { gauges: [first] },
});
