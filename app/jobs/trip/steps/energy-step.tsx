"use client";

import { useState } from "react";
import { Disclosure } from "#app/design/worked-out.tsx";
import { type UnitText, unitText } from "#lib/units/unit-text.ts";
import { type Draft, listAt, numberAt, textAt } from "../draft.ts";
import { EntryList } from "../entry-list.tsx";
import { ChoiceAt, FlagAt, NumberAt, TextAt } from "../fields.tsx";
import { NotesAt } from "../notes.tsx";
import styles from "../trip.module.css";
import { useTrip } from "../trip-context.ts";
import { BillsFromFile } from "./bills-from-file.tsx";
import { PriceShapes } from "./price-shapes.tsx";
import { TemperaturesFromFile } from "./temperatures-from-file.tsx";

interface Fuels {
  gas: boolean;
  propane: boolean;
  oil: boolean;
  electricHeat: boolean;
  cooling: boolean;
}

/** Which fuels this house can use: only those are asked for. */
function useFuels(): Fuels {
  const { draft } = useTrip();
  const systems = listAt(draft, "systems");
  const kinds = systems.map((system) => textAt(system, "heating/kind"));
  const has = (kind: string) => kinds.includes(kind);
  return {
    gas: has("gas-furnace"),
    propane: has("propane-furnace"),
    oil: has("oil-furnace"),
    electricHeat: has("heat-pump") || has("electric-furnace"),
    cooling: systems.some((system) => textAt(system, "cooling/kind") !== undefined),
  };
}

const BILLED = [
  ["electricityKWh", "kWh", ""],
  ["naturalGasTherms", "therms", ""],
  ["propaneGallons", "gal", " of propane"],
  ["fuelOilGallons", "gal", " of oil"],
] as const;

/** What a bill says in one line. */
function billFacts(bill: Draft, text: UnitText): string {
  const amounts = BILLED.flatMap(([key, unit, fuel]) => {
    const value = numberAt(bill, key);
    return value === undefined ? [] : [`${text.quantity(value, unit)}${fuel}`];
  });
  return amounts.length > 0 ? amounts.join(" · ") : "nothing entered yet";
}

export function EnergyStep() {
  const { gas, propane, oil, electricHeat, cooling } = useFuels();
  const { draft, units } = useTrip();
  /** A file may bill a fuel that the equipment does not use: hot water, cooking. */
  const isBilled = (field: string) => listAt(draft, "energy/bills").some((bill) => bill[field] !== undefined);
  /** Fields keep what is typed: what a file brings is shown by making them anew. */
  const [takenCount, setTakenCount] = useState(0);
  const readAnew = () => setTakenCount((count) => count + 1);
  const use = "energy/knownUse";
  return (
    <>
      <h2>For heating and cooling alone, a year</h2>
      <p>
        Without hot water, cooking and lights. Not known? Enter bills below, or leave both out: then the size and the
        year of the house speak.
      </p>
      {gas ? <NumberAt path={`${use}/heatingNaturalGasTherms`} /> : null}
      {propane ? <NumberAt path={`${use}/heatingPropaneGallons`} /> : null}
      {oil ? <NumberAt path={`${use}/heatingFuelOilGallons`} /> : null}
      {electricHeat ? <NumberAt path={`${use}/heatingElectricityKWh`} /> : null}
      {cooling ? <NumberAt path={`${use}/coolingElectricityKWh`} /> : null}
      <h2>Bills</h2>
      <p>A year of bills, as they come, with everything in them: the weather tells heating and cooling apart.</p>
      <BillsFromFile onTaken={readAnew} />
      <TemperaturesFromFile onTaken={readAnew} />
      <EntryList
        key={takenCount}
        path="energy/bills"
        headingLevel={3}
        title={(bill, index) => `Bill ${index + 1}${textAt(bill, "endDate") ? `, to ${textAt(bill, "endDate")}` : ""}`}
        facts={(bill) => billFacts(bill, unitText(units))}
        addLabel="Add a bill"
        makeNew={(list) => ({ startDate: textAt(list.at(-1) ?? {}, "endDate") ?? "" })}
      >
        {(path) => (
          <div className={styles.pairs}>
            <TextAt path={`${path}/startDate`} hint="As 2026-01-15." />
            <TextAt path={`${path}/endDate`} hint="As 2026-02-14." />
            <NumberAt path={`${path}/electricityKWh`} />
            {gas || isBilled("naturalGasTherms") ? <NumberAt path={`${path}/naturalGasTherms`} /> : null}
            {propane || isBilled("propaneGallons") ? <NumberAt path={`${path}/propaneGallons`} /> : null}
            {oil || isBilled("fuelOilGallons") ? <NumberAt path={`${path}/fuelOilGallons`} /> : null}
            <NumberAt path={`${path}/meanOutdoorF`} hint="As many bills print it; or choose a file above." />
            <FlagAt path={`${path}/isEstimated`} />
          </div>
        )}
      </EntryList>
      <ChoiceAt path="energy/prefer" unknownLabel="The best there is" />
      <NotesAt path="energy" />
      <h2>Prices</h2>
      <NumberAt path="rates/electricityUsdPerKWh" />
      {gas ? <NumberAt path="rates/naturalGasUsdPerTherm" /> : null}
      {propane ? <NumberAt path="rates/propaneUsdPerGallon" /> : null}
      {oil ? <NumberAt path="rates/fuelOilUsdPerGallon" /> : null}
      <PriceShapes gas={gas} />
      <Disclosure title="Money over the years">
        <NumberAt path="rates/measureLifeYears" />
        <NumberAt path="rates/fuelEscalationRate" />
        <NumberAt path="rates/discountRate" />
      </Disclosure>
    </>
  );
}
