import { readQuantity } from "#app/design/read-quantity.ts";
import { type Contractor, contractorSchema } from "#lib/documents/contractor.ts";
import { readAccentColor } from "#lib/documents/letterhead/accent-color.ts";
import { problemsFromZod } from "#lib/errors/from-zod.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";

/** The fields of the form as they are typed. */
export const FIRM_FIELDS = [
  "name",
  "license",
  "address",
  "phone",
  "email",
  "accentColor",
  "paymentTerms",
  "missedGoal",
  "creditUsd",
  "lender",
  "yearlyRatePercent",
  "monthsCount",
] as const;
export type FirmDraft = Readonly<Record<(typeof FIRM_FIELDS)[number], string>>;

export const MISSED_GOAL_RULES = ["none", "work-on", "credit", "re-offer"] as const;
const CENTS = 100;
const PERCENT = 100;
/** Multiplying by a hundred leaves dust in the last digit of a double. */
const withoutDust = (value: number): number => Number(value.toPrecision(12));

/** A firm as the form shows it. */
export function firmDraftOf({ missedGoal, financing, ...firm }: Contractor): FirmDraft {
  return {
    name: firm.name,
    license: firm.license ?? "",
    address: firm.address ?? "",
    phone: firm.phone ?? "",
    email: firm.email ?? "",
    accentColor: firm.accentColor ?? "",
    paymentTerms: firm.paymentTerms ?? "",
    missedGoal: missedGoal?.rule ?? "none",
    creditUsd: missedGoal?.rule === "credit" ? String(missedGoal.creditUsdCents / CENTS) : "",
    lender: financing?.lender ?? "",
    yearlyRatePercent: financing ? String(withoutDust(financing.yearlyRate * PERCENT)) : "",
    monthsCount: financing ? String(financing.monthsCount) : "",
  };
}

export interface FirmProblem {
  fieldId: string;
  text: string;
}

/** Where the form has the parts of the schema. */
const FIELD_OF: Readonly<Record<string, string>> = {
  creditUsdCents: "creditUsd",
  yearlyRate: "yearlyRatePercent",
  financing: "lender",
};

/** What was typed as a firm, or what is wrong with it field by field. The logo has a form of its own. */
export function readFirm(draft: FirmDraft): Omit<Contractor, "logo"> | { problems: FirmProblem[] } {
  const problems: FirmProblem[] = [];
  const number = (fieldId: keyof FirmDraft, label: string): number | undefined => {
    const value = readQuantity(draft[fieldId]);
    if (value === undefined) problems.push({ fieldId, text: `Enter ${label} as a number, such as 12.5` });
    return value;
  };
  const lines = (["license", "address", "phone", "email", "paymentTerms"] as const).flatMap((field) =>
    draft[field].trim() === "" ? [] : [[field, draft[field]] as const],
  );
  const candidate = {
    name: draft.name,
    ...Object.fromEntries(lines),
    ...accentOf(draft, problems),
    ...missedGoalOf(draft, number),
    ...financingOf(draft, number),
  };
  const parsed = contractorSchema.omit({ logo: true }).safeParse(candidate);
  if (parsed.success && problems.length === 0) return parsed.data;
  const ofSchema = parsed.success
    ? []
    : problemsFromZod({ error: parsed.error, schema: contractorSchema, input: candidate });
  const told = ofSchema.map(({ pointer, detail, fix }) => {
    const last = pointer.split("/").at(-1) ?? "";
    return {
      fieldId: FIELD_OF[last] ?? last,
      text: last === "name" ? "Enter the name of the firm" : `${detail}. ${fix}`,
    };
  });
  const untold = told.filter(({ fieldId }) => !problems.some((problem) => problem.fieldId === fieldId));
  return { problems: [...problems, ...untold] };
}

function accentOf({ accentColor }: FirmDraft, problems: FirmProblem[]): { accentColor?: string } {
  if (accentColor.trim() === "") return {};
  try {
    return { accentColor: readAccentColor(accentColor) };
  } catch (thrown) {
    if (!(thrown instanceof InputProblem)) throw thrown;
    problems.push(...thrown.errors.map(({ detail, fix }) => ({ fieldId: "accentColor", text: `${detail}. ${fix}` })));
    return {};
  }
}

type ReadNumber = (fieldId: keyof FirmDraft, label: string) => number | undefined;

function missedGoalOf({ missedGoal: rule }: FirmDraft, number: ReadNumber): object {
  if (rule === "none") return {};
  if (rule !== "credit") return { missedGoal: { rule } };
  const dollars = number("creditUsd", "what is taken off");
  return { missedGoal: { rule, creditUsdCents: dollars === undefined ? undefined : Math.round(dollars * CENTS) } };
}

function financingOf({ lender, yearlyRatePercent, monthsCount }: FirmDraft, number: ReadNumber): object {
  if ([lender, yearlyRatePercent, monthsCount].every((typed) => typed.trim() === "")) return {};
  const percent = number("yearlyRatePercent", "the interest a year");
  return {
    financing: {
      lender,
      yearlyRate: percent === undefined ? undefined : withoutDust(percent / PERCENT),
      monthsCount: number("monthsCount", "the months"),
    },
  };
}
