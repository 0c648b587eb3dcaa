import { refuse } from "#lib/errors/input-problem.ts";
import { requireAbove } from "#lib/errors/require-number.ts";
import type { BtuPerHour } from "#lib/units/quantity.ts";

/** Capacity of a season and the use that a rule gives it: capacity × full-load hours ÷ efficiency. */
export interface SeasonOfRule {
  capacity: BtuPerHour;
  use: number;
}

const LABELS: Readonly<Record<string, string>> = {
  coolingCapacityBtuPerH: "Cooling capacity",
  heatingCapacityBtuPerH: "Heating capacity",
  seer: "SEER",
  heatingEfficiency: "Heating efficiency",
};

/** Null where none of the three is given. @throws InputProblem where only a part is. */
export function wholeSeason<Name extends string>(
  input: Partial<Record<Name, number>>,
  [capacity, hours, efficiency]: readonly [Name, Name, Name],
): SeasonOfRule | null {
  const names = [capacity, hours, efficiency];
  const absent = names.filter((name) => input[name] === undefined);
  if (absent.length === names.length) return null;
  if (absent.length > 0) {
    refuse({
      field: absent[0]!,
      detail: `${absent.join(" and ")} is missing beside ${names.filter((name) => !absent.includes(name)).join(" and ")}`,
      fix: "Give capacity, full-load hours and efficiency together, or none of them.",
    });
  }
  requireAbove({ field: capacity, label: LABELS[capacity] ?? capacity, value: input[capacity]!, unit: "Btu/h" });
  requireAbove({ field: efficiency, label: LABELS[efficiency] ?? efficiency, value: input[efficiency]! });
  return { capacity: input[capacity]!, use: (input[capacity]! * input[hours]!) / input[efficiency]! };
}

export function requireOneSeason(cooling: SeasonOfRule | null, heating: SeasonOfRule | null): void {
  if (cooling !== null || heating !== null) return;
  refuse({
    field: "coolingCapacityBtuPerH",
    detail: "Neither cooling nor heating is described",
    fix: "Give capacity, full-load hours and efficiency of at least one of them.",
  });
}
