import { readQuantity } from "#app/design/read-quantity.ts";

/** The mean of readings typed one after the other, and how far they lie apart. */
export interface SeriesAverage {
  count: number;
  mean: number;
  lowest: number;
  highest: number;
  /** Some lie above zero and some below: one was typed without its sign, or the pressure is about zero. */
  hasBothSigns: boolean;
  /** What could not be read as a number. */
  unread: readonly string[];
}

/** A gauge shows tenths; the mean of many is worth one digit more. */
const DECIMALS = 2;

/**
 * The average of a series as one types it at the gauge: numbers with spaces, lines or semicolons between them. A comma is
 * a thousands sign, as in every field. Absent while there is no number.
 */
export function averageOfSeries(typed: string): SeriesAverage | undefined {
  const words = typed.split(/[\s;]+/).filter((word) => word !== "");
  const numbers = words.flatMap((word) => readQuantity(word) ?? []);
  if (numbers.length === 0) return undefined;
  const sum = numbers.reduce((total, number) => total + number, 0);
  const [lowest, highest] = [Math.min(...numbers), Math.max(...numbers)];
  return {
    count: numbers.length,
    mean: Number((sum / numbers.length).toFixed(DECIMALS)),
    lowest,
    highest,
    hasBothSigns: lowest < 0 && highest > 0,
    unread: words.filter((word) => readQuantity(word) === undefined),
  };
}
