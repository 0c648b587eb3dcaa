import { describe, expect, it } from "vitest";
import { COMPACT_WIDTH, WIDE_WIDTH } from "#lib/pictures/scene.ts";
import { type WeatherShiftsInput, weatherShiftsScene } from "#lib/pictures/weather-shifts.ts";
import { OHARE } from "#tests/climate/tmy3-years.ts";
import { expectSoundScene } from "./scene-checks.ts";

const { month, shift, temperatureF, hours } = OHARE.bins;
const INPUT: WeatherShiftsInput = {
  stationLabel: "O'Hare",
  bins: Array.from(month, (each, bin) => ({
    month: each,
    shift: shift[bin]!,
    temperatureF: temperatureF[bin]!,
    hours: hours[bin]!,
  })),
  heatingBaseF: 60,
  coolingBaseF: 70,
};
const WIDE = { width: WIDE_WIDTH };
const numberIn = (cell: string) => Number(cell.replaceAll(",", ""));

describe("the hours by month and shift", () => {
  it("is sound at both widths, in both languages and unit systems", () => {
    expectSoundScene((options) => weatherShiftsScene(INPUT, options));
    expectSoundScene((options) => weatherShiftsScene(INPUT, { ...options, units: "si" }));
  });

  it("nrel-tmy3: the table holds every hour of the year, 8 a day in each month and shift", () => {
    const { rows } = weatherShiftsScene(INPUT, WIDE).table;
    const total = (column: number, label = "") =>
      rows.filter((row) => row[0]!.startsWith(label)).reduce((sum, row) => sum + numberIn(row[column]!), 0);
    expect(total(13)).toBe(8760);
    for (const label of ["midnight to 8 am", "8 am to 4 pm", "4 pm to midnight"]) {
      expect(total(1, label), label).toBe(31 * 8);
      expect(total(2, label), label).toBe(28 * 8);
    }
  });

  it("draws one bar for each cell of the table that is not empty", () => {
    for (const width of [COMPACT_WIDTH, WIDE_WIDTH]) {
      const { shapes, table } = weatherShiftsScene(INPUT, { width });
      const cells = table.rows.flatMap((row) => row.slice(1, 13)).filter((cell) => cell !== "0");
      expect(shapes.filter((shape) => shape.kind === "rect")).toHaveLength(cells.length);
    }
  });

  it("counts the hours on each side of the bases that are asked for", () => {
    const counted = (isCounted: (value: number) => boolean) =>
      INPUT.bins.filter((bin) => isCounted(bin.temperatureF)).reduce((sum, bin) => sum + bin.hours, 0);
    const said = `${counted((value) => value < 60).toLocaleString("en-US")} hours a year are colder than 60 °F`;
    const { finding } = weatherShiftsScene(INPUT, WIDE);
    expect(finding).toContain(said);
    expect(finding).toContain(`${counted((value) => value > 70).toLocaleString("en-US")} hotter than 70 °F`);
    // Nights of January are the coldest in Chicago, afternoons of July the hottest.
    expect(finding).toMatch(/in January, midnight to 8 am, to .* in July, 8 am to 4 pm/);
  });

  it("keeps bins apart whose middles a move to other normals has shifted", () => {
    const moved = { ...INPUT, bins: INPUT.bins.map((bin) => ({ ...bin, temperatureF: bin.temperatureF + 1.37 })) };
    const { shapes } = weatherShiftsScene(moved, WIDE);
    const places = shapes.filter((shape) => shape.kind === "rect").map(({ x, y, width }) => `${x + width / 2} ${y}`);
    expect(new Set(places).size).toBe(INPUT.bins.length);
  });

  it("speaks of °C to a reader of SI, and only the words change", () => {
    const si = weatherShiftsScene(INPUT, { ...WIDE, units: "si" });
    expect(si.finding).toContain("colder than 15.6 °C");
    expect(si.table.columns[0]!.label).toBe("Shift and temperature (°C)");
    const us = weatherShiftsScene(INPUT, WIDE);
    expect(si.table.rows.map((row) => row.slice(1))).toEqual(us.table.rows.map((row) => row.slice(1)));
  });

  it("refuses part of a year", () => {
    const bins = INPUT.bins.filter((bin) => !(bin.month === 4 && bin.shift === 2));
    expect(() => weatherShiftsScene({ ...INPUT, bins }, WIDE)).toThrow("Every month needs hours in all three shifts");
  });
});
