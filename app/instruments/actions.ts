"use server";

import { redirect } from "next/navigation";
import type { z } from "zod";
import { actAs } from "#app/jobs/session.ts";
import type { Draft } from "#app/jobs/trip/draft.ts";
import { plainDraft } from "#app/jobs/trip/plain-draft.ts";
import { inputProblemFromZod } from "#lib/errors/from-zod.ts";
import { type FieldProblem, InputProblem } from "#lib/errors/input-problem.ts";
import { fanSchema, gaugeSchema } from "#lib/job/instrument-schema.ts";
import type { InstrumentEntry } from "#lib/store/repositories/instruments.ts";

export type InstrumentKind = InstrumentEntry["kind"];

export interface SaveInstrumentReply {
  /** Each at its place inside the instrument. */
  problems: readonly FieldProblem[];
  /** Somebody else saved first: nothing was kept of this one. */
  conflict?: string;
}

/** Keeps an instrument for every job to take in: a new one, or the change of one. */
export async function saveInstrument({
  kind,
  id,
  onUpdatedAt,
  document,
}: {
  kind: InstrumentKind;
  id?: string;
  onUpdatedAt?: string;
  document: Draft;
}): Promise<SaveInstrumentReply> {
  try {
    const entry = readEntry(kind, plainDraft(document));
    await actAs("instrument.edit", async ({ instruments, audit }) => {
      const subjectId = id ?? (await instruments.add(entry)).instrument.id;
      if (id) await instruments.change(id, new Date(onUpdatedAt ?? 0), entry);
      await audit.record({
        action: id ? "instrument.changed" : "instrument.added",
        subjectKind: "instrument",
        subjectId,
        detail: entry.instrument,
      });
    });
  } catch (thrown) {
    if (!(thrown instanceof InputProblem)) throw thrown;
    if (thrown.code === "conflict" || thrown.code === "not-found" || thrown.code === "not-allowed")
      return { problems: [], conflict: thrown.message };
    return { problems: thrown.errors };
  }
  redirect("/instruments");
}

/** @throws InputProblem naming each field */
function readEntry(kind: InstrumentKind, document: Draft): InstrumentEntry {
  const candidate = { ...document, id: "instrument" };
  return kind === "fan"
    ? { kind, instrument: readWith(fanSchema, candidate) }
    : { kind, instrument: readWith(gaugeSchema, candidate) };
}

function readWith<Instrument extends { id: string }>(
  schema: z.ZodType<Instrument>,
  input: Draft,
): Omit<Instrument, "id"> {
  const verdict = schema.safeParse(input);
  if (!verdict.success) throw inputProblemFromZod({ error: verdict.error, input, schema });
  const { id: _id, ...instrument } = verdict.data;
  return instrument;
}

/** Takes an instrument out of use, or back. Jobs that took it in keep it. */
export async function retireInstrument(form: FormData): Promise<void> {
  const [id, isRetired] = [String(form.get("id")), form.get("isRetired") === "yes"];
  await actAs("instrument.edit", async ({ instruments, audit }) => {
    await instruments.retire(id, isRetired);
    await audit.record({
      action: isRetired ? "instrument.retired" : "instrument.restored",
      subjectKind: "instrument",
      subjectId: id,
    });
  });
  redirect("/instruments");
}
