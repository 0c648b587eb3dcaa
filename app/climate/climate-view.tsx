import { Notice } from "#app/design/notice.tsx";
import { Picture } from "#app/design/picture.tsx";
import { StatGrid } from "#app/design/stat-block.tsx";
import { warningIn } from "#app/jobs/trip/warning-in.ts";
import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import { weatherShiftsScene } from "#lib/pictures/weather-shifts.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { sentenceInSystem } from "#lib/units/sentence-in-system.ts";
import { unitText } from "#lib/units/unit-text.ts";
import styles from "./climate.module.css";
import type { ClimateQuery } from "./climate-query.ts";
import { DegreeDays } from "./degree-days.tsx";
import { Stations } from "./stations.tsx";

const BASES = {
  tmy3: "A typical year of 1991-2005 as published, since no normals of 1991-2020 stand beside this station.",
  "tmy3-at-1991-2020-normals":
    "The hours of a typical year of 1991-2005, each month moved to the mean temperature of 1991-2020.",
  "weather-file": "From a weather file.",
} as const satisfies Record<ReferenceData["climate"]["basis"], string>;

/** The sources of what this page shows; those of prices and carbon belong elsewhere. */
const SHOWN_SOURCES: readonly ReferenceData["credits"][number]["sourceId"][] = [
  "geonames",
  "nrel-tmy3",
  "noaa-normals-1991-2020",
  "doe-zones",
];

/** Everything about one place, in the order of the questions: from where, how extreme, when, how much. */
export function ClimateView({
  query,
  reference,
  units,
}: {
  query: ClimateQuery;
  reference: ReferenceData;
  units: UnitSystem;
}) {
  const text = unitText(units);
  const { place, climate, station, credits } = reference;
  const { design, bins } = climate;
  const degrees = text.unit("°F");
  const estimate = (id: string, label: string, valueF: number) => ({
    id,
    label,
    value: text.number(valueF, "°F"),
    unit: degrees,
    doubt: "estimated",
  });
  const picture = {
    stationLabel: station.title,
    bins: Array.from(bins.month, (month, bin) => ({
      month,
      shift: bins.shift[bin]!,
      temperatureF: bins.temperatureF[bin]!,
      hours: bins.hours[bin]!,
    })),
    heatingBaseF: query.heatingBaseF,
    coolingBaseF: query.coolingBaseF,
  };
  return (
    <>
      <h2>{place.title}</h2>
      <p>
        {place.climateZone ? `Climate zone ${place.climateZone}. ` : ""}
        {place.elevation
          ? `Elevation about ${text.quantity(place.elevation.value, "ft")}. ${sentenceInSystem(place.elevation.note, units)}`
          : "The elevation is not known, so height did not count in choosing the station."}
      </p>
      <Stations query={query} reference={reference} text={text} />
      {reference.warnings.length > 0 ? (
        <div className={styles.stack}>
          {reference.warnings
            .map((warning) => warningIn(units, warning))
            .map(({ code, what, why, nextMove, severity }) => (
              <Notice key={`${code} ${what}`} kind={severity === "note" ? "info" : severity} title={what}>
                {`${why} ${nextMove}`}
              </Notice>
            ))}
        </div>
      ) : null}
      <h2>Design temperatures, estimated</h2>
      <StatGrid
        stats={[
          estimate("heating996", "Heating: colder in 0.4 % of the hours", design.heating996F),
          estimate("heating99", "Heating: colder in 1 % of the hours", design.heating99F),
          estimate("cooling1", "Cooling: hotter in 1 % of the hours", design.cooling1F),
          estimate("cooling04", "Cooling: hotter in 0.4 % of the hours", design.cooling04F),
        ]}
      />
      <p className={styles.soft}>
        Each is {design.label}
        {climate.basis === "tmy3-at-1991-2020-normals" ? " and moved with its coldest or hottest month" : ""}: a
        percentile of one typical year, not of many. To size equipment or meet a code, use the design temperatures that
        the code names for this place.
      </p>
      <h2>Temperatures through the year</h2>
      <p>{BASES[climate.basis]}</p>
      <Picture build={(options) => weatherShiftsScene(picture, { ...options, units })} />
      <DegreeDays query={query} climate={climate} text={text} />
      <h2>Sources</h2>
      <ul>
        {credits
          .filter(({ sourceId }) => SHOWN_SOURCES.includes(sourceId))
          .map(({ sourceId, title, text: words, license, link }) => (
            <li key={sourceId}>
              <strong>{title}.</strong> {words} {license}. {link ? <a href={link}>{link}</a> : null}
            </li>
          ))}
      </ul>
    </>
  );
}
