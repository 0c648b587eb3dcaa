import { usageProblem } from "./usage-problem.ts";

/** @throws InputProblem that names the option, its value and what is allowed. */
export function wholeNumber(text: string, { name, low, high }: { name: string; low: number; high: number }): number {
  const value = Number(text);
  if (text.trim() === "" || !(Number.isInteger(value) && value >= low && value <= high))
    throw usageProblem(`--${name} takes a whole number from ${low} to ${high}, not “${text}”.`);
  return value;
}
