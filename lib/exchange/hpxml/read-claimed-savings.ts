import type { KilowattHours, Therms } from "#lib/units/quantity.ts";
import type { XmlNode } from "./xml-node.ts";

/** What the file itself says was saved a year. Held against our own answer, never taken for it. */
export interface ClaimedSavings {
  electricityKWh?: KilowattHours;
  naturalGasTherms?: Therms;
}

/** Savings by fuel of the project, where they stand in the units that are known here. */
export function readClaimedSavings(project: XmlNode | undefined, say: (line: string) => void): ClaimedSavings {
  const saved: ClaimedSavings = {};
  for (const each of project?.child("EnergySavingsInfo")?.children("FuelSavings") ?? []) {
    const kind = `${each.text("Fuel")} in ${each.text("Units")}`;
    const value = each.number("TotalSavings");
    if (kind === "electricity in kWh") saved.electricityKWh = value;
    else if (kind === "natural gas in therms") saved.naturalGasTherms = value;
    else say(`${each.path}: savings of ${kind} were not read`);
  }
  return saved;
}
