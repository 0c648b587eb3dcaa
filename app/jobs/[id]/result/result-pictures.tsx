import { Picture } from "#app/design/picture.tsx";
import { PictureViews } from "#app/design/picture-views.tsx";
import type { Job } from "#lib/job/job-schema.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { energyMonthsScene } from "#lib/pictures/energy-months.ts";
import { houseSectionScene } from "#lib/pictures/house/house-section.ts";
import { hundredDollarsScene } from "#lib/pictures/hundred-dollars.ts";
import { leaksRankedScene } from "#lib/pictures/leaks-ranked.ts";
import {
  energyMonthsOf,
  leaksRankedOf,
  priceFrontierOf,
  savingsDriversOf,
  savingsRangeOf,
} from "#lib/pictures/of-result/charts-of-result.ts";
import { houseSectionOfResult } from "#lib/pictures/of-result/house-section-of-result.ts";
import { hundredDollarsOfMode } from "#lib/pictures/of-result/hundred-dollars-of-mode.ts";
import { priceFrontierScene } from "#lib/pictures/price-frontier.ts";
import { savingsDriversScene } from "#lib/pictures/savings-drivers.ts";
import { savingsRangeScene } from "#lib/pictures/savings-range.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";

/** This house, today and after the chosen work. */
export function HousePictures({ job, result, units }: { job: Job; result: Result; units: UnitSystem }) {
  const view = (when: "before" | "after") => (
    <Picture
      headingLevel={2}
      build={(options) => houseSectionScene(houseSectionOfResult({ job, result, when }), { ...options, units })}
    />
  );
  return (
    <PictureViews
      label="When"
      views={[
        { id: "before", label: "Today", picture: view("before") },
        { id: "after", label: "After sealing", picture: view("after") },
      ]}
    />
  );
}

/** Money, months and leaks; a picture that has nothing to show is left out. */
export function ChartPictures({ job, result, units }: { job: Job; result: Result; units: UnitSystem }) {
  const range = savingsRangeOf(result);
  const drivers = savingsDriversOf(result);
  const frontier = priceFrontierOf(result);
  const hasWork = result.scope.chosen !== null;
  return (
    <>
      {result.systems.flatMap(({ id, distribution }) =>
        (["heating", "cooling"] as const).flatMap((use) => {
          const mode = distribution[use];
          if (!mode) return [];
          const input = hundredDollarsOfMode({ use, mode, hasWork });
          return [
            <Picture headingLevel={2} key={`${id} ${use}`} build={(options) => hundredDollarsScene(input, options)} />,
          ];
        }),
      )}
      {range ? <Picture headingLevel={2} build={(options) => savingsRangeScene(range, options)} /> : null}
      {drivers ? <Picture headingLevel={2} build={(options) => savingsDriversScene(drivers, options)} /> : null}
      {job.sites.length > 0 ? (
        <Picture
          headingLevel={2}
          build={(options) => leaksRankedScene(leaksRankedOf({ job, result }), { ...options, units })}
        />
      ) : null}
      {frontier ? (
        <Picture headingLevel={2} build={(options) => priceFrontierScene(frontier, { ...options, units })} />
      ) : null}
      <Picture headingLevel={2} build={(options) => energyMonthsScene(energyMonthsOf(result, units), options)} />
    </>
  );
}
