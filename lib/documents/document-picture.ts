import { type EnergyMonthsInput, energyMonthsScene } from "#lib/pictures/energy-months.ts";
import { houseSectionScene } from "#lib/pictures/house/house-section.ts";
import type { HouseSectionInput } from "#lib/pictures/house/house-section-input.ts";
import { type HundredDollarsInput, hundredDollarsScene } from "#lib/pictures/hundred-dollars.ts";
import { type PriceFrontierInput, priceFrontierScene } from "#lib/pictures/price-frontier.ts";
import { type SavingsDriversInput, savingsDriversScene } from "#lib/pictures/savings-drivers.ts";
import { type SavingsRangeInput, savingsRangeScene } from "#lib/pictures/savings-range.ts";
import type { Scene, SceneOptions } from "#lib/pictures/scene.ts";

/** A picture as the numbers it is drawn from, so that page and paper draw it at their own width. */
export type DocumentPicture =
  | { of: "house"; input: HouseSectionInput }
  | { of: "hundred-dollars"; input: HundredDollarsInput }
  | { of: "savings-range"; input: SavingsRangeInput }
  | { of: "savings-drivers"; input: SavingsDriversInput }
  | { of: "price-frontier"; input: PriceFrontierInput }
  | { of: "energy-months"; input: EnergyMonthsInput };

/** Draws a picture of a document at a width and in a language. */
export function pictureScene(picture: DocumentPicture, options: SceneOptions): Scene {
  switch (picture.of) {
    case "house":
      return houseSectionScene(picture.input, options);
    case "hundred-dollars":
      return withoutEmptyRows(hundredDollarsScene(picture.input, options));
    case "savings-range":
      return savingsRangeScene(picture.input, options);
    case "savings-drivers":
      return savingsDriversScene(picture.input, options);
    case "price-frontier":
      return priceFrontierScene(picture.input, options);
    case "energy-months":
      return energyMonthsScene(picture.input, options);
  }
}

/** A part that is nothing before and after, such as a blower that was not counted, is no row of the table. */
function withoutEmptyRows(scene: Scene): Scene {
  const rows = scene.table.rows.filter(([, ...values]) => values.some((value) => value !== "0"));
  return { ...scene, table: { ...scene.table, rows } };
}

/** The cut through the house stands beside a table of its leaks; every other picture brings its own. */
export const hasOwnTable = ({ of }: DocumentPicture): boolean => of !== "house";
