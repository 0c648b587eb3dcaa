import type { SourceId } from "./sources.ts";

/** Where an equation or a figure comes from. */
export interface Source {
  id: string;
  title: string;
  author: string;
  year: number | null;
  kind: SourceKind;
  /** How far the source was at hand: read, or remembered and so cited as "form of". */
  basis: "read" | "from-memory" | "derived";
  note?: string;
}

export type SourceKind = "standard" | "handbook" | "report" | "dataset" | "derivation" | "practice" | "program-rule";

export interface Citation {
  sourceId: SourceId;
  /** Section, equation, table. */
  locator?: string;
}

/** A constant never stands without its unit and where it is from. */
export interface SourcedValue {
  value: number;
  unit: string;
  source: Citation;
  /** For an assumption: why this value, and how far it may be off. */
  reason?: string;
  low?: number;
  high?: number;
}
