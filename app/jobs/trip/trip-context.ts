"use client";

import { createContext, useContext } from "react";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import type { Answer } from "./answer.ts";
import type { Draft, Json } from "./draft.ts";
import type { FieldSpec } from "./field-spec.ts";
import type { LiveReadings } from "./live-readings.ts";
import type { WalkWords } from "./walk-words.ts";

/** What every field of the trip shares. */
export interface TripContextValue {
  jobId: string;
  draft: Draft;
  /** The units in which numbers are shown and typed; the draft keeps its own. */
  units: UnitSystem;
  answer: Answer | null;
  readings: LiveReadings;
  walk?: WalkWords | undefined;
  set(path: string, value: Json | undefined): void;
  /** A number that could not be read stays as it was typed; undefined once it can. */
  setUnreadable(path: string, text: string | undefined): void;
  unreadable: Readonly<Record<string, string>>;
  specOf(path: string): FieldSpec;
  /** What is wrong with a field, after one has tried to go on. */
  errorAt(path: string): string | undefined;
}

export const TripContext = createContext<TripContextValue | null>(null);

export function useTrip(): TripContextValue {
  const trip = useContext(TripContext);
  if (!trip) throw new Error("A field of the trip stands outside of it");
  return trip;
}

/** The path as the schema knows it: any place in a list is a star. */
export const starPathOf = (path: string): string => path.replaceAll(/\/\d+(?=\/|$)/g, "/*");
export const lastKeyOf = (path: string): string => path.slice(path.lastIndexOf("/") + 1);
