import { randomUUID } from "node:crypto";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { fanSchema, type Gauge, gaugeSchema, type TestFan } from "#lib/job/instrument-schema.ts";
import { toJson } from "../json.ts";
import { notFound, requireId } from "../not-found.ts";
import type { UnitOfWork } from "../unit-of-work.ts";

/** A test fan or gauge of an organization; its id is the one by which jobs know it. */
export type InstrumentRecord = {
  updatedAt: Date;
  /** Jobs that took it in keep it; no new one does. */
  isRetired: boolean;
} & ({ kind: "fan"; instrument: TestFan } | { kind: "gauge"; instrument: Gauge });

/** As it was entered: with its id when it is known already. */
export type InstrumentEntry =
  | { kind: "fan"; instrument: Omit<TestFan, "id"> }
  | { kind: "gauge"; instrument: Omit<Gauge, "id"> };

interface Row {
  id: string;
  kind: "fan" | "gauge";
  document: unknown;
  updatedAt: Date;
  retiredAt: Date | null;
}

function toRecord({ id, kind, document, updatedAt, retiredAt }: Row): InstrumentRecord {
  const known = { updatedAt, isRetired: retiredAt !== null };
  const withId = { ...(document as object), id };
  return kind === "fan"
    ? { ...known, kind, instrument: fanSchema.parse(withId) }
    : { ...known, kind, instrument: gaugeSchema.parse(withId) };
}

const dateOf = (isoDate: string | undefined): Date | null => (isoDate ? new Date(`${isoDate}T00:00:00Z`) : null);

/** The columns beside the document: what lists are sorted and searched by. */
function columnsOf({ kind, instrument }: InstrumentEntry) {
  const { name, serialNumber, calibrationDate, calibrationDueDate } = instrument;
  return {
    kind,
    label: name,
    serialNumber: serialNumber ?? null,
    document: toJson(instrument),
    calibratedOn: dateOf(calibrationDate),
    validUntil: dateOf(calibrationDueDate),
  };
}

export function instruments({ sql, identity }: UnitOfWork) {
  const { organizationId } = identity;

  async function findRow(id: string): Promise<Row> {
    const row = await sql.instrument.findUnique({ where: { id: requireId(id, "instrument") } });
    if (!row) throw notFound("instrument");
    return row;
  }

  return {
    /** Fans first, each kind by name; those in use before those that were retired. */
    async list(): Promise<InstrumentRecord[]> {
      const rows = await sql.instrument.findMany({
        orderBy: [{ retiredAt: { sort: "asc", nulls: "first" } }, { kind: "asc" }, { label: "asc" }, { id: "asc" }],
      });
      return rows.map(toRecord);
    },

    async find(id: string): Promise<InstrumentRecord> {
      return toRecord(await findRow(id));
    },

    /** @param id given only for an instrument that every start makes again, such as that of the demonstration. */
    async add(entry: InstrumentEntry, id: string = randomUUID()): Promise<InstrumentRecord> {
      return toRecord(await sql.instrument.create({ data: { id, organizationId, ...columnsOf(entry) } }));
    },

    /** @throws InputProblem `conflict` when somebody changed it since `onUpdatedAt`. */
    async change(id: string, onUpdatedAt: Date, entry: InstrumentEntry): Promise<void> {
      await findRow(id);
      const { count } = await sql.instrument.updateMany({
        where: { id, kind: entry.kind, updatedAt: onUpdatedAt },
        data: columnsOf(entry),
      });
      if (count === 0) {
        throw new InputProblem(
          "conflict",
          [],
          "Somebody changed this instrument meanwhile. Load it again, then repeat your change.",
        );
      }
    },

    /** Takes an instrument out of use, or back into it. */
    async retire(id: string, isRetired: boolean): Promise<void> {
      await findRow(id);
      await sql.instrument.update({ where: { id }, data: { retiredAt: isRetired ? new Date() : null } });
    },
  };
}
