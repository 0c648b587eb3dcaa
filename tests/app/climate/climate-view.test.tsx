import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { readClimateQuery } from "#app/climate/climate-query.ts";
import { ClimateView } from "#app/climate/climate-view.tsx";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { expectClose } from "#tests/expect-close.ts";

async function pageOf(raw: Record<string, string>, units: "us" | "si" = "us") {
  const query = readClimateQuery(raw, units);
  const house = {
    ...(query.zip ? { zip: query.zip } : {}),
    ...(query.stationId ? { stationId: query.stationId } : {}),
  };
  const reference = await loadReferenceData({ house });
  const html = renderToStaticMarkup(<ClimateView query={query} reference={reference} units={units} />);
  return { html, reference };
}

describe("the climate of a place", () => {
  it("names the station with distance and height, and offers each other one with all answers kept", async () => {
    const { html, reference } = await pageOf({ zip: "60601", heating: "60" });
    expect(html).toMatch(/Best match: 17 miles away, 68 ft higher, with normals of 1991-2020/);
    expect(reference.station.alternatives.length).toBeGreaterThan(3);
    for (const { id } of reference.station.alternatives) {
      expect(html).toContain(`href="/climate?zip=60601&amp;station=${id}&amp;heating=60&amp;degrees=F&amp;cooling=65"`);
    }
  });

  it("a station asked for stands in, with the way back", async () => {
    const { html } = await pageOf({ zip: "60601", station: "725340" });
    expect(html).toContain("Asked for by name: 10 miles away");
    expect(html).toContain("Use the best match again");
  });

  it("says of each design temperature that it is estimated, and defers to the code", async () => {
    const { html } = await pageOf({ zip: "60601" });
    expect(html.match(/> estimated</g)).toHaveLength(4);
    expect(html).toContain("use the design temperatures that the code names");
  });

  it("noaa-normals-1991-2020: January at O'Hare, published mean 25.2 °F, has 31 (65 − 25.2) = 1,234 degree days", async () => {
    const { html } = await pageOf({ zip: "60601" });
    expect(html).toMatch(/January<\/th><td[^>]*>1,234<\/td><td[^>]*>0<\/td>/);
    // The same in kelvin days, to the same base.
    const si = await pageOf({ zip: "60601", heating: "65", cooling: "65", degrees: "F" }, "si");
    const kelvinDays = Number(/January<\/th><td[^>]*>(\d+)<\/td>/.exec(si.html)?.[1]);
    expectClose({
      actual: kelvinDays,
      expected: (31 * (65 - 25.2) * 5) / 9,
      relativeTolerance: 0.002,
      reason: "the mean is published to 0.1 °F, the answer is shown whole",
    });
  });

  it("names the sources of the weather, and not those of prices", async () => {
    const { html } = await pageOf({ zip: "60601" });
    for (const name of ["GeoNames", "National Renewable Energy Laboratory", "US Climate Normals 1991-2020"])
      expect(html).toContain(name);
    expect(html).not.toContain("Energy Information Administration");
  });
});
