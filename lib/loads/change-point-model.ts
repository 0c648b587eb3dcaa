import type { Fahrenheit } from "#lib/units/quantity.ts";

/** A bill's days and use; the temperature of each day where known, else the mean over the period. */
export interface BillPeriod {
  days: number;
  use: number;
  dailyTemperaturesF?: readonly Fahrenheit[];
  meanTemperatureF?: Fahrenheit;
}

export const CHANGE_POINT_MODELS = ["heating", "cooling", "both"] as const;
export type ChangePointModel = (typeof CHANGE_POINT_MODELS)[number];

/** Base, slope and balance temperature; a second slope and balance where both are fitted. */
export const PARAMETERS_OF: Readonly<Record<ChangePointModel, number>> = { heating: 3, cooling: 3, both: 5 };

/** Null where the model has no such season. */
export interface BalanceTemperatures {
  heatingF: Fahrenheit | null;
  coolingF: Fahrenheit | null;
}

export type Season = "heating" | "cooling";
