"use client";

import { Disclosure } from "#app/design/worked-out.tsx";
import { EntryList } from "../entry-list.tsx";
import { ChoiceAt, NumberAt } from "../fields.tsx";
import styles from "../trip.module.css";

/** Prices that depend on how much or when, instead of the flat price. */
export function PriceShapes({ gas }: { gas: boolean }) {
  const shifts = "rates/electricityByShift";
  return (
    <Disclosure title="Price in steps of use, or by time of day">
      <p>
        Instead of the flat price. Leave fixed charges out: they are the same before and after. A saving is worth what
        the last units of each month cost, or what power costs at the hour.
      </p>
      <PriceSteps fuel="Electricity" path="rates/electricityTiers" end="upToKWh" price="usdPerKWh" />
      <NumberAt path="rates/otherElectricityKWh" />
      {gas ? <PriceSteps fuel="Gas" path="rates/naturalGasTiers" end="upToTherms" price="usdPerTherm" /> : null}
      {gas ? <NumberAt path="rates/otherNaturalGasTherms" /> : null}
      <h3>Electricity by time of day</h3>
      <p>The mean price of each 8 hours, standard time: where a dear price lasts from 16 to 21 o'clock, mix it in.</p>
      <ShiftPrices path={shifts} />
      <h3>Summer, if its prices differ</h3>
      <ChoiceAt path={`${shifts}/summer/firstMonth`} unknownLabel="No summer prices" />
      <ChoiceAt path={`${shifts}/summer/lastMonth`} unknownLabel="No summer prices" />
      <ShiftPrices path={`${shifts}/summer`} />
    </Disclosure>
  );
}

function ShiftPrices({ path }: { path: string }) {
  return (
    <div className={styles.pairs}>
      <NumberAt path={`${path}/nightUsdPerKWh`} />
      <NumberAt path={`${path}/dayUsdPerKWh`} />
      <NumberAt path={`${path}/eveningUsdPerKWh`} />
    </div>
  );
}

function PriceSteps({ fuel, path, end, price }: { fuel: string; path: string; end: string; price: string }) {
  return (
    <EntryList
      path={path}
      headingLevel={3}
      title={(_, index) => `${fuel}, step ${index + 1}`}
      addLabel={`Add a step of the ${fuel.toLowerCase()} price`}
      makeNew={() => ({})}
    >
      {(step) => (
        <div className={styles.pairs}>
          <NumberAt path={`${step}/${end}`} />
          <NumberAt path={`${step}/${price}`} />
        </div>
      )}
    </EntryList>
  );
}
