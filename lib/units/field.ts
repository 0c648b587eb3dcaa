import { z } from "zod";
import type { Quantity } from "./quantity.ts";

/** What a number in a schema says of itself. */
export interface NumberField<Unit extends string> {
  unit: Unit;
  title: string;
  description?: string;
  /** Inclusive limits. */
  min?: number;
  max?: number;
  /** Exclusive lower limit. */
  above?: number;
  isInteger?: boolean;
}

/**
 * A finite number with its unit in the schema (`.meta({ unit })`) and in the type. The key that holds it must end in
 * the unit's suffix (`lib/units/unit-names.ts`); a test holds the two together.
 */
export function numberField<Unit extends string>(field: NumberField<Unit>): z.ZodType<Quantity<Unit>, Quantity<Unit>> {
  const { unit, title, description, min, max, above, isInteger } = field;
  let schema = z.number(`Enter a number for ${title.toLowerCase()}`);
  if (isInteger) schema = schema.int();
  if (min !== undefined) schema = schema.min(min);
  if (above !== undefined) schema = schema.gt(above);
  if (max !== undefined) schema = schema.max(max);
  return schema.meta({ unit, title, ...(description ? { description } : {}) }) as unknown as z.ZodType<
    Quantity<Unit>,
    Quantity<Unit>
  >;
}
