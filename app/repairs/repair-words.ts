import type { Repair } from "#lib/scope/repair-schema.ts";
import { citationText } from "#lib/sources/source-title.ts";
import { formatNumber } from "#lib/units/format.ts";

export const PER_WORDS: Readonly<Record<Repair["materials"][number]["per"], string>> = {
  leak: "each leak",
  "gap-foot": "each foot of gap",
  "run-foot": "each foot of new duct",
  system: "each system",
};

/** A small share, to half a percent. */
export const sharePercent = (share: number): string =>
  `${formatNumber(Math.round(share * 1000) / 10, { significantDigits: 3 })}%`;

/** Where a figure is from, and why it is what it is. */
export function sourceWords({ sourceId, locator, reason }: Repair["evidence"]["effect"]): string {
  return `${reason} (${citationText({ sourceId, locator })})`;
}

/** A field of a repair as the history names it. */
export const FIELD_WORDS: Readonly<Record<string, string>> = {
  isOffered: "offered",
  remainingShare: "leakage expected to be left",
  remainingSpreadShare: "spread of what is left",
  labourHours: "person hours",
  materials: "materials",
};

/** A value as it stands in the history, where it is kept as JSON text. */
export function changeWords(field: string, json: string): string {
  const value: unknown = json === "" ? undefined : JSON.parse(json);
  if (value === undefined) return field === "isOffered" ? "yes" : "not set";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") return sharePercent(value);
  if (field === "labourHours") {
    const { easy, moderate, hard } = value as Repair["labourHours"];
    return `${easy} / ${moderate} / ${hard}`;
  }
  if (field === "materials") {
    return (value as Repair["materials"])
      .map(({ materialId, amount, per }) => `${materialId} ${amount} ${PER_WORDS[per]}`)
      .join(", ");
  }
  return String(value);
}
