import { z } from "zod";
import { numberField } from "#lib/units/field.ts";

/** A number with its doubt. `p10`, `p50`, `p90` are there when draws were made; all take the parent's unit. */
export function ranged<Unit extends string>({
  unit,
  title,
  description,
}: {
  unit: Unit;
  title: string;
  description?: string;
}) {
  return z
    .strictObject({
      value: numberField({ unit, title }),
      p10: numberField({ unit, title: `${title}, one in ten lower` }).optional(),
      p50: numberField({ unit, title: `${title}, median` }).optional(),
      p90: numberField({ unit, title: `${title}, one in ten higher` }).optional(),
    })
    .meta({ unit, title, ...(description ? { description } : {}) });
}

export interface Ranged {
  value: number;
  p10?: number;
  p50?: number;
  p90?: number;
}
