import { DAYS_IN_MONTH } from "#lib/climate/climate-year.ts";

/** One hour as the tests make it up, before it is written in either format. */
export interface MadeHour {
  month: number;
  day: number;
  hour: number;
  dryBulbC: number;
  dewPointC: number;
  pressurePa: number;
  sunWPerM2: number;
}

const round = (value: number, count: number) => Number(value.toFixed(count));

/** An invented year: a season, a day, some weather; the sun from 7 to 18. */
export function madeHours(): MadeHour[] {
  const hours: MadeHour[] = [];
  DAYS_IN_MONTH.forEach((days, month) => {
    for (let day = 1; day <= days; day += 1)
      for (let hour = 1; hour <= 24; hour += 1) {
        const at = hours.length;
        const dryBulbC =
          11 -
          13 * Math.cos((2 * Math.PI * (at - 500)) / 8760) -
          5 * Math.cos((2 * Math.PI * (hour - 4)) / 24) +
          4 * Math.sin(at / 41);
        hours.push({
          month: month + 1,
          day,
          hour,
          dryBulbC: round(dryBulbC, 1),
          dewPointC: round(dryBulbC - 3 - 2 * Math.sin(at / 97) ** 2, 1),
          pressurePa: 98_000 + 100 * Math.round(5 * Math.sin(at / 200)),
          sunWPerM2: hour > 7 && hour < 19 ? Math.round(600 * Math.sin((Math.PI * (hour - 7)) / 12)) : 0,
        });
      }
  });
  return hours;
}

const EPW_HEAD = [
  "LOCATION,Invented Town,WI,USA,Made for a test,999990,43.1,-89.3,-6.0,264.0",
  "DESIGN CONDITIONS,0",
  "TYPICAL/EXTREME PERIODS,0",
  "GROUND TEMPERATURES,0",
  "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0",
  "COMMENTS 1,Invented",
  "COMMENTS 2,Invented",
  "DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31",
];
/** The first hour stands on this line of either text. */
export const EPW_FIRST_LINE = EPW_HEAD.length + 1;
export const TMY3_FIRST_LINE = 3;

export const epwLines = (hours: readonly MadeHour[]): string[] => [
  ...EPW_HEAD,
  ...hours.map(
    ({ month, day, hour, dryBulbC, dewPointC, pressurePa, sunWPerM2 }) =>
      `2001,${month},${day},${hour},60,?9?9,${dryBulbC},${dewPointC},999,${pressurePa},9999,9999,9999,${sunWPerM2},0,0,999999,999999,999999,9999,180,3.0,5,5,9999,99999,9,999999999,0,0,0,88,0,0,0`,
  ),
];

const two = (value: number) => String(value).padStart(2, "0");

export const tmy3Lines = (hours: readonly MadeHour[]): string[] => [
  '999990,"INVENTED TOWN, WEST",WI,-6.0,43.100,-89.300,264',
  "Date (MM/DD/YYYY),Time (HH:MM),ETR (W/m^2),GHI (W/m^2),GHI source,Dry-bulb (C),Dew-point (C),RHum (%),Pressure (mbar)",
  ...hours.map(
    ({ month, day, hour, dryBulbC, dewPointC, pressurePa, sunWPerM2 }) =>
      `${two(month)}/${two(day)}/1995,${two(hour)}:00,0,${sunWPerM2},1,${dryBulbC},${dewPointC},-9900,${pressurePa / 100}`,
  ),
];
