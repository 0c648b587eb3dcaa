import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { StationLink } from "#app/jobs/[id]/result/station-link.tsx";
import { ClimateLink } from "#app/jobs/trip/steps/climate-link.tsx";

const PLACE = {
  title: "Chicago, IL 60601",
  stationId: "725300",
  stationTitle: "Chicago Ohare International Airport, IL",
  distanceMiles: 17,
  heatingDesignF: 3,
  coolingDesignF: 88,
};

describe("the ways to the climate of a job's place", () => {
  it("the house step has one as soon as there is a whole ZIP code or a station", () => {
    expect(renderToStaticMarkup(<ClimateLink zip="6060" />)).toBe("");
    expect(renderToStaticMarkup(<ClimateLink zip=" 60601 " />)).toContain('href="/climate?zip=60601"');
    expect(renderToStaticMarkup(<ClimateLink zip="60601" stationId="725340" />)).toContain("station=725340");
    expect(renderToStaticMarkup(<ClimateLink stationId="725340" />)).toContain('href="/climate?station=725340"');
  });

  it("the result leads to the very station it took, and to none for a weather file", () => {
    const taken = renderToStaticMarkup(<StationLink zip="60601" place={PLACE} />);
    expect(taken).toContain('href="/climate?zip=60601&amp;station=725300"');
    const own = renderToStaticMarkup(<StationLink zip="60601" place={{ ...PLACE, distanceMiles: null }} />);
    expect(own).toBe(PLACE.stationTitle);
  });
});
