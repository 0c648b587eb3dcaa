import { readQuantity } from "#app/design/read-quantity.ts";
import { canonicalJson } from "#lib/hash/content-hash.ts";
import type { Repair } from "#lib/scope/repair-schema.ts";

/** The figures of a repair as they are typed. */
export interface RepairDraft {
  isOffered: boolean;
  remainingPercent: string;
  spreadPercent: string;
  easyHours: string;
  moderateHours: string;
  hardHours: string;
  materials: readonly { materialId: string; amount: string; per: Repair["materials"][number]["per"] }[];
  /** Where the new figures are from. */
  reason: string;
}

export interface RepairProblem {
  fieldId: string;
  text: string;
}

/** Multiplying a share by a hundred leaves dust in the last digit of a double. */
const DIGITS = 12;
const percentText = (share: number): string => String(Number((share * 100).toPrecision(DIGITS)));

export function draftOfRepair(repair: Repair): RepairDraft {
  const { easy, moderate, hard } = repair.labourHours;
  return {
    isOffered: repair.isOffered !== false,
    remainingPercent: percentText(repair.remainingShare),
    spreadPercent: percentText(repair.remainingSpreadShare),
    easyHours: String(easy),
    moderateHours: String(moderate),
    hardHours: String(hard),
    materials: repair.materials.map(({ materialId, amount, per }) => ({ materialId, amount: String(amount), per })),
    reason: "",
  };
}

interface Bounds {
  label: string;
  least: number;
  most: number;
  /** The least itself is not allowed. */
  isAbove?: boolean;
}

const MOST_HOURS = 80;
const MOST_AMOUNT = 1000;

/** The repair with the figures that were typed, each own figure saying where it is from; or all that is wrong. */
export function readRepairDraft(
  repair: Repair,
  draft: RepairDraft,
): { repair: Repair } | { problems: readonly RepairProblem[] } {
  const problems: RepairProblem[] = [];
  const read = (fieldId: string, text: string, { label, least, most, isAbove = false }: Bounds): number => {
    const number = readQuantity(text);
    const isFit = number !== undefined && number <= most && (isAbove ? number > least : number >= least);
    if (!isFit)
      problems.push({ fieldId, text: `${label}: enter a number ${isAbove ? "above" : "from"} ${least} to ${most}` });
    return number ?? 0;
  };
  const share = (fieldId: string, text: string, label: string, most: number): number =>
    Number(`${read(fieldId, text, { label, least: 0, most })}e-2`);
  const hours = (fieldId: string, text: string, label: string): number =>
    read(fieldId, text, { label, least: 0, most: MOST_HOURS, isAbove: true });

  const figures = {
    remainingShare: share("remaining", draft.remainingPercent, "Leakage expected to be left", 100),
    remainingSpreadShare: share("spread", draft.spreadPercent, "Spread", 50),
    labourHours: {
      easy: hours("easy", draft.easyHours, "Easy to reach"),
      moderate: hours("moderate", draft.moderateHours, "Moderate"),
      hard: hours("hard", draft.hardHours, "Hard to reach"),
    },
    materials: draft.materials.map(({ materialId, amount, per }, index) => ({
      materialId,
      per,
      amount: read(`material-${index}`, amount, { label: "Amount", least: 0, most: MOST_AMOUNT, isAbove: true }),
    })),
  };
  if (draft.reason.trim() === "")
    problems.push({ fieldId: "reason", text: "Say where the new figures are from, or why they change" });
  if (problems.length > 0) return { problems };
  const own = { sourceId: "practice", reason: `Own figure: ${draft.reason.trim()}`.slice(0, 200) };
  const differs = (names: readonly (keyof typeof figures)[]): boolean =>
    names.some((name) => canonicalJson(figures[name]) !== canonicalJson(repair[name]));
  const { evidence } = repair;
  return {
    repair: {
      ...repair,
      ...figures,
      ...(draft.isOffered ? (repair.isOffered === undefined ? {} : { isOffered: true }) : { isOffered: false }),
      evidence: {
        ...evidence,
        effect: differs(["remainingShare", "remainingSpreadShare"]) ? own : evidence.effect,
        labour: differs(["labourHours"]) ? own : evidence.labour,
        materials: differs(["materials"]) ? own : evidence.materials,
      },
    },
  };
}
