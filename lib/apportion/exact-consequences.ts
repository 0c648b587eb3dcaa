import type { Cfm, Share } from "#lib/units/quantity.ts";
import type { LeakSide, MeasurementName } from "./measurement-rows.ts";

/** Equalities are met to this share of the largest measurement; what differs by less is equal. */
const EQUAL_RATIO = 1e-9;

export type ExactMeasurements = Readonly<Partial<Record<MeasurementName, Cfm>>>;

/** Whole = one part + other part. */
const SUMS = [
  ["total", "supply", "return"],
  ["toOutside", "supplyToOutside", "returnToOutside"],
] as const satisfies readonly (readonly MeasurementName[])[];

/** Which leaks a measurement and its part to outside speak of. */
const PARTS = [
  { all: "total", outside: "toOutside", side: null },
  { all: "supply", outside: "supplyToOutside", side: "supply" },
  { all: "return", outside: "returnToOutside", side: "return" },
] as const satisfies readonly { all: MeasurementName; outside: MeasurementName; side: LeakSide | null }[];

/**
 * What exact measurements that hold together settle by themselves: leaks that must be 0, and measurements that say
 * nothing more. Taken out beforehand, they leave the solver a regular problem. Source: own-method.
 */
export function exactConsequences(exact: ExactMeasurements): {
  isForcedToZero: (side: LeakSide, toOutsideShare: Share) => boolean;
  isRedundant: (name: MeasurementName) => boolean;
} {
  const known = new Map(Object.entries(exact) as [MeasurementName, Cfm][]);
  const level = EQUAL_RATIO * Math.max(0, ...known.values());
  const redundant = new Set<MeasurementName>();
  for (const [name, cfm25] of known) if (cfm25 <= level) redundant.add(name);
  for (const [whole, one, other] of SUMS) {
    const [all, first, second] = [known.get(whole), known.get(one), known.get(other)];
    if (all === undefined) {
      if (first !== undefined && second !== undefined) known.set(whole, first + second);
      continue;
    }
    if (first !== undefined && second === undefined) known.set(other, all - first);
    if (second !== undefined && first === undefined) known.set(one, all - second);
    // With both parts known, or one that takes all, the whole says nothing more.
    const takesAll = [one, other].some((part) => part in exact && all - known.get(part)! <= level);
    if ((first !== undefined && second !== undefined) || takesAll) redundant.add(whole);
  }
  const isZero = (name: MeasurementName) => (known.get(name) ?? Number.POSITIVE_INFINITY) <= level;
  const isAllOutside = (all: MeasurementName, outside: MeasurementName) =>
    known.has(all) && known.has(outside) && known.get(all)! - known.get(outside)! <= level;
  for (const { all, outside } of PARTS)
    if (isAllOutside(all, outside) && all in exact && outside in exact) redundant.add(all);
  return {
    isForcedToZero: (side, toOutsideShare) =>
      PARTS.filter((part) => part.side === null || part.side === side).some(
        ({ all, outside }) =>
          isZero(all) || (isZero(outside) && toOutsideShare > 0) || (isAllOutside(all, outside) && toOutsideShare < 1),
      ),
    isRedundant: (name) => redundant.has(name),
  };
}
