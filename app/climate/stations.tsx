import Link from "next/link";
import { DataTable } from "#app/design/data-table.tsx";
import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import { sentenceInSystem } from "#lib/units/sentence-in-system.ts";
import type { UnitText } from "#lib/units/unit-text.ts";
import { climateHref } from "./climate-href.ts";
import type { ClimateQuery } from "./climate-query.ts";

/** Which station stands for the place and why, and the others, each of them a link that takes it instead. */
export function Stations({
  query,
  reference: { station, climate },
  text,
}: {
  query: ClimateQuery;
  reference: ReferenceData;
  text: UnitText;
}) {
  const say = (sentence: string) => sentenceInSystem(sentence, text.system);
  // The words before the colon speak of a job.
  const reason = station.reason.replace(/^[^:]*: /, "");
  const withStation = (stationId?: string) => climateHref({ ...query, stationId });
  return (
    <>
      <h2>The weather station</h2>
      <p>
        <strong>{station.title}</strong>
        {station.distanceMiles === null ? "" : `, ${text.quantity(station.distanceMiles, "mi")} away`}, at{" "}
        {text.quantity(climate.elevationFt, "ft")}. {station.isChosenByRule ? "Best match" : "Asked for by name"}:{" "}
        {say(reason)}.{" "}
        {station.isChosenByRule || query.zip === undefined ? null : (
          <Link href={withStation()}>Use the best match again</Link>
        )}
      </p>
      <DataTable
        caption="Other stations near, best first; a name takes it instead"
        columns={[
          { label: "Station" },
          { label: `Distance (${text.unit("mi")})`, isNumeric: true },
          { label: `Elevation (${text.unit("ft")})`, isNumeric: true },
          { label: "Against the place" },
        ]}
        rows={station.alternatives.map((each) => ({
          id: each.id,
          cells: [
            <Link key={each.id} href={withStation(each.id)}>
              {each.title}
            </Link>,
            text.number(each.distanceMiles, "mi"),
            text.number(each.elevationFt, "ft"),
            say(each.reason),
          ],
        }))}
        isCardsWhenNarrow
      />
    </>
  );
}
