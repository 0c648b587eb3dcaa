import { type FieldProblem, InputProblem } from "#lib/errors/input-problem.ts";
import { type Bill, energyUseSchema } from "#lib/job/energy-use.ts";

/** The field of a bill that holds a fuel, in the unit of its name. */
export type BilledField = Extract<
  keyof Bill,
  "electricityKWh" | "naturalGasTherms" | "propaneGallons" | "fuelOilGallons"
>;

/** One fuel over one period, first and last day counted, as YYYY-MM-DD. */
export interface BilledUse {
  field: BilledField;
  startDate: string;
  endDate: string;
  use: number;
  isEstimated: boolean;
}

/** What a file gives: bills as a job takes them, in order of time, and what was done to get them. */
export interface BillFile {
  bills: Bill[];
  notes: string[];
}

export const FUEL_WORDS = {
  electricityKWh: { fuel: "electricity", unit: "kWh" },
  naturalGasTherms: { fuel: "natural gas", unit: "therms" },
  propaneGallons: { fuel: "propane", unit: "gal" },
  fuelOilGallons: { fuel: "heating oil", unit: "gal" },
} as const satisfies Record<BilledField, { fuel: string; unit: string }>;

export const MOST_BILLS = 120;

/** A file of bills that cannot be used: where, what is wrong, what to do. */
export function billProblem({ at, detail, fix }: { at: string; detail: string; fix: string }): InputProblem {
  return new InputProblem("input-unusable", [
    { pointer: `#/${at}`, code: "bill-file", detail: `${at}: ${detail}`, fix },
  ]);
}

/**
 * Bills of a job: fuels billed over the same days, estimated alike, share one. Valid for up to 120 of them.
 * @throws InputProblem when a use is out of what a bill may hold, or there are too many.
 */
export function billsOfUses(uses: readonly BilledUse[]): Bill[] {
  const bills = new Map<string, Record<string, string | number | boolean>>();
  for (const { field, startDate, endDate, use, isEstimated } of uses) {
    const key = `${startDate} ${endDate} ${isEstimated}`;
    const bill = bills.get(key) ?? { startDate, endDate, ...(isEstimated ? { isEstimated } : {}) };
    bills.set(key, { ...bill, [field]: use });
  }
  const inOrder = [...bills.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, bill]) => bill);
  const parsed = energyUseSchema.shape.bills.safeParse(inOrder);
  if (parsed.success) return parsed.data ?? [];
  throw new InputProblem(
    "input-unusable",
    parsed.error.issues.map(({ path: [index, field], message }): FieldProblem => {
      const bill = typeof index === "number" ? inOrder[index] : undefined;
      return {
        pointer: `#/${[index, field].filter((part) => part !== undefined).join("/")}`,
        code: "bill-file",
        detail: bill
          ? `The bill from ${bill.startDate} to ${bill.endDate}: ${String(field)} is ${bill[String(field)]}. ${message}`
          : `${inOrder.length} bills are more than the ${MOST_BILLS} that a job takes`,
        fix: bill ? "Correct it in the file." : "Keep the last years only.",
      };
    }),
  );
}
