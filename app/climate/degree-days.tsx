import { Button } from "#app/design/button.tsx";
import { DataTable } from "#app/design/data-table.tsx";
import { QuantityField } from "#app/design/quantity-field.tsx";
import { type ClimateYear, MONTHS_PER_YEAR } from "#lib/climate/climate-year.ts";
import { degreeDaysByMonth } from "#lib/climate/degree-days-by-month.ts";
import { fieldNumberOf } from "#lib/units/display-unit.ts";
import type { UnitText } from "#lib/units/unit-text.ts";
import styles from "./climate.module.css";
import { type ClimateQuery, degreesOf, usualBaseF } from "./climate-query.ts";

const monthName = (month: number): string =>
  new Date(Date.UTC(2001, month, 1)).toLocaleDateString("en-US", { month: "long", timeZone: "UTC" });

/** Degree days of a typical year to the bases that are asked for, and the form that asks. */
export function DegreeDays({ query, climate, text }: { query: ClimateQuery; climate: ClimateYear; text: UnitText }) {
  const { heatingBaseF, coolingBaseF } = query;
  const heating = degreeDaysByMonth({ climate, baseTemperatureF: heatingBaseF });
  const cooling = degreeDaysByMonth({ climate, baseTemperatureF: coolingBaseF });
  const hourlyHeating = degreeDaysByMonth({ climate, baseTemperatureF: heatingBaseF, basis: "hourly" });
  const hourlyCooling = degreeDaysByMonth({ climate, baseTemperatureF: coolingBaseF, basis: "hourly" });
  const degrees = text.unit("°F");
  const count = (value: number) => text.number(value, "°F·d");
  const base = (valueF: number) => text.quantity(valueF, "°F");
  const inField = (valueF: number) => String(fieldNumberOf({ value: valueF, unit: "°F", system: text.system }));
  const errorOf = (id: string) => query.errors.find(({ fieldId }) => fieldId === id)?.text;
  const row = (id: string, heatingDays: number, coolingDays: number) => ({
    id,
    cells: [id, count(heatingDays), count(coolingDays)],
  });
  const fields = [
    { id: "heating", label: "Heating base", valueF: heatingBaseF, typed: query.typedBases.heating },
    { id: "cooling", label: "Cooling base", valueF: coolingBaseF, typed: query.typedBases.cooling },
  ];
  return (
    <>
      <h2 id="degree-days">Degree days</h2>
      <p>
        {count(heating.heatingDegreeDays)} {text.unit("°F·d")} a year below {base(heatingBaseF)} for heating,{" "}
        {count(cooling.coolingDegreeDays)} above {base(coolingBaseF)} for cooling.
      </p>
      <form method="get" action="/climate#degree-days" noValidate className={styles.form}>
        {query.zip ? <input type="hidden" name="zip" value={query.zip} /> : null}
        {query.stationId ? <input type="hidden" name="station" value={query.stationId} /> : null}
        <input type="hidden" name="degrees" value={degreesOf(text.system)} />
        <div className={styles.bases}>
          {fields.map(({ id, label, valueF, typed }) => (
            <QuantityField
              key={`${id} ${typed ?? inField(valueF)}`}
              id={id}
              name={id}
              label={`${label}, in degrees ${text.system === "si" ? "Celsius" : "Fahrenheit"}`}
              unit={degrees}
              defaultValue={typed ?? inField(valueF)}
              error={errorOf(id)}
            />
          ))}
        </div>
        <Button type="submit" variant="secondary">
          Count again
        </Button>
      </form>
      <DataTable
        caption="Degree days of each month of a typical year"
        columns={[
          { label: "Month" },
          { label: `Heating below ${base(heatingBaseF)} (${text.unit("°F·d")})`, isNumeric: true },
          { label: `Cooling above ${base(coolingBaseF)} (${text.unit("°F·d")})`, isNumeric: true },
        ]}
        rows={[
          ...Array.from({ length: MONTHS_PER_YEAR }, (_, month) =>
            row(monthName(month), heating.monthly[month]!.heatingDegreeDays, cooling.monthly[month]!.coolingDegreeDays),
          ),
          row("Year", heating.heatingDegreeDays, cooling.coolingDegreeDays),
        ]}
      />
      <p className={styles.soft}>
        Counted as weather services do, from each day's (highest + lowest)/2, here drawn from the bins of hours. Counted
        hour by hour the year has {count(hourlyHeating.heatingDegreeDays)} and {count(hourlyCooling.coolingDegreeDays)}.
        Without a base entered, it is {base(usualBaseF(text.system))}.
      </p>
    </>
  );
}
