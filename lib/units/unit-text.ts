import { shownFromStored, shownUnitOf, type UnitSystem } from "./display-unit.ts";
import { formatNumber } from "./format.ts";

/** Quantities as a person of one unit system reads them. What goes in is always in the unit of the job. */
export interface UnitText {
  readonly system: UnitSystem;
  /** "136" */
  number(value: number, unit: string): string;
  /** "L/s" */
  unit(unit: string): string;
  /** "136 L/s" */
  quantity(value: number, unit: string): string;
}

export function unitText(system: UnitSystem): UnitText {
  const number = (value: number, unit: string) => formatNumber(shownFromStored({ value, unit, system }));
  const unitOf = (unit: string) => shownUnitOf({ unit, system });
  return { system, number, unit: unitOf, quantity: (value, unit) => `${number(value, unit)} ${unitOf(unit)}` };
}
