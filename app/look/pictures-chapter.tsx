import { Picture } from "#app/design/picture.tsx";
import { PictureViews } from "#app/design/picture-views.tsx";
import { climateScene } from "#lib/pictures/climate-scene.ts";
import { energyMonthsScene } from "#lib/pictures/energy-months.ts";
import { houseSectionScene } from "#lib/pictures/house/house-section.ts";
import { hundredDollarsScene } from "#lib/pictures/hundred-dollars.ts";
import { leaksRankedScene } from "#lib/pictures/leaks-ranked.ts";
import { priceFrontierScene } from "#lib/pictures/price-frontier.ts";
import { savingsDriversScene } from "#lib/pictures/savings-drivers.ts";
import { savingsRangeScene } from "#lib/pictures/savings-range.ts";
import { testPointsScene } from "#lib/pictures/test-points.ts";
import styles from "./look.module.css";
import * as figures from "./sample-figures.ts";
import * as houses from "./sample-houses.ts";
import { Chapter } from "./specimen.tsx";

/** Every picture of the product, drawn from invented numbers. */
export function PicturesChapter() {
  return (
    <Chapter
      id="pictures"
      title="Pictures"
      intro="Each is a pure function from numbers to shapes; page and paper draw the same shapes. Each has a heading, a sentence made from its numbers, and a table that says the same."
    >
      <PictureViews
        label="Which state of the house"
        views={[
          {
            id: "today",
            label: "Today",
            picture: (
              <Picture
                build={(options) => houseSectionScene(houses.ATTIC_HOUSE, options)}
                itemHref={(id) => `#${id}`}
              />
            ),
          },
          {
            id: "sealed",
            label: "After sealing",
            picture: <Picture build={(options) => houseSectionScene(houses.ATTIC_HOUSE_SEALED, options)} />,
          },
        ]}
      />
      <div className={styles.pictures}>
        <Picture build={(options) => houseSectionScene(houses.TWO_SYSTEM_HOUSE, options)} />
        <Picture build={(options) => houseSectionScene(houses.CRAWLSPACE_HOUSE, options)} />
        <Picture build={(options) => houseSectionScene(houses.MANUFACTURED_HOME, options)} language="es" />
        <Picture build={(options) => hundredDollarsScene(figures.HUNDRED_DOLLARS, options)} />
        <Picture build={(options) => testPointsScene(figures.TEST_POINTS, options)} />
        <Picture build={(options) => savingsRangeScene(figures.SAVINGS_RANGE, options)} />
        <Picture build={(options) => savingsRangeScene(figures.SAVINGS_MAYBE_NOTHING, options)} language="es" />
        <Picture build={(options) => savingsDriversScene(figures.SAVINGS_DRIVERS, options)} />
        <Picture build={(options) => energyMonthsScene(figures.ENERGY_MONTHS, options)} />
        <Picture build={(options) => leaksRankedScene(figures.LEAKS_RANKED, options)} />
        <Picture build={(options) => priceFrontierScene(figures.PRICE_FRONTIER, options)} />
        <Picture build={(options) => climateScene(figures.CLIMATE, options)} />
      </div>
    </Chapter>
  );
}
