import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chooseStation, type StationSite } from "#lib/reference-data/choose-station.ts";
import { greatCircleMiles } from "#lib/reference-data/great-circle-miles.ts";
import { stationsOf } from "#lib/reference-data/locate-place.ts";
import { expectClose } from "#tests/expect-close.ts";
import { stationIndex, stationTables, zipRows } from "./read-table.ts";

const stations = stationsOf(stationIndex);
const site = (id: string, over: Partial<StationSite> = {}): StationSite => ({
  id,
  title: id,
  latitudeDegrees: 40,
  longitudeDegrees: -100,
  elevationFt: 1000,
  hasNormals: true,
  doubt: null,
  ...over,
});
const place = { latitudeDegrees: 40, longitudeDegrees: -100 };
const DEGREE_MILES = 69.09;

describe("distance along the earth", () => {
  it("practice: one degree of latitude is 69.1 miles, of longitude half that at 60° north", () => {
    const reason = "published to three figures, sphere for ellipsoid";
    const north = greatCircleMiles(place, { latitudeDegrees: 41, longitudeDegrees: -100 });
    expectClose({ actual: north, expected: 69.1, relativeTolerance: 0.002, reason });
    const east = greatCircleMiles(
      { latitudeDegrees: 60, longitudeDegrees: 0 },
      { latitudeDegrees: 60, longitudeDegrees: 1 },
    );
    expectClose({ actual: east, expected: 34.55, relativeTolerance: 0.002, reason });
    expect(greatCircleMiles(place, place)).toBe(0);
  });

  it("is the same both ways, and never above half the way round", () => {
    const point = fc.record({
      latitudeDegrees: fc.double({ min: -90, max: 90, noNaN: true }),
      longitudeDegrees: fc.double({ min: -180, max: 180, noNaN: true }),
    });
    fc.assert(
      fc.property(point, point, (from, to) => {
        const miles = greatCircleMiles(from, to);
        expect(miles).toBeGreaterThanOrEqual(0);
        expect(miles).toBeLessThan(12_450);
        expect(Math.abs(miles - greatCircleMiles(to, from))).toBeLessThan(1e-6);
      }),
    );
  });
});

describe("the choice of a station", () => {
  const near = site("near", { latitudeDegrees: 40 + 10 / DEGREE_MILES, elevationFt: 1500 });
  const high = site("high", { latitudeDegrees: 40 + 5 / DEGREE_MILES, elevationFt: 6000 });

  it("takes the nearest where height is not known, and says so", () => {
    const [first] = chooseStation({ place, stations: [near, high] });
    expect(first!.id).toBe("high");
    expect(first!.reason).toContain("height not compared");
  });

  it("counts 1,000 ft of height as 100 miles", () => {
    expect(chooseStation({ place, elevationFt: 1500, stations: [near, high] })[0]!.id).toBe("near");
    expect(chooseStation({ place, elevationFt: 6000, stations: [near, high] })[0]!.id).toBe("high");
    const far = site("far", { latitudeDegrees: 40 + 99 / DEGREE_MILES });
    const above = site("above", { elevationFt: 2000 });
    expect(chooseStation({ place, elevationFt: 1000, stations: [far, above] })[0]!.id).toBe("far");
    const farther = site("farther", { latitudeDegrees: 40 + 101 / DEGREE_MILES });
    expect(chooseStation({ place, elevationFt: 1000, stations: [farther, above] })[0]!.id).toBe("above");
  });

  it("goes up to 15 miles farther for normals of 1991-2020", () => {
    const without = site("without", { hasNormals: false });
    const at = (miles: number) => site("with", { latitudeDegrees: 40 + miles / DEGREE_MILES });
    expect(chooseStation({ place, stations: [without, at(14)] })[0]!.id).toBe("with");
    expect(chooseStation({ place, stations: [without, at(16)] })[0]!.id).toBe("without");
  });

  it("puts a station with faulty hours last, with the reason", () => {
    const faulty = site("faulty", { doubt: "Its July is on fire." });
    const ranked = chooseStation({ place, stations: [faulty, near, high] });
    expect(ranked.at(-1)!.id).toBe("faulty");
    expect(ranked.at(-1)!.reason).toContain("on fire");
  });

  it("does not depend on the order of the stations", () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(stations, { minLength: 1011 }), (shuffled) => {
        const elevationFt = 5000;
        expect(chooseStation({ place, elevationFt, stations: shuffled })).toEqual(
          chooseStation({ place, elevationFt, stations }),
        );
      }),
      { numRuns: 5 },
    );
  });

  it("every ZIP code resolves to a station that nothing speaks against", () => {
    const chosen = zipRows
      .filter((_, row) => row % 20 === 0)
      .map(([, , , latitudeDegrees, longitudeDegrees, , , elevationFt]) =>
        chooseStation({
          place: { latitudeDegrees, longitudeDegrees },
          elevationFt: elevationFt ?? undefined,
          stations,
        }),
      );
    expect(chosen.length).toBeGreaterThan(2000);
    expect(chosen.every(([first]) => first !== undefined && !(first.id in stationIndex.doubts))).toBe(true);
    expect(chosen.every((ranked) => ranked.length === 8)).toBe(true);
  });

  it("nrel-tmy3, each station predicted from another: height halves the error where the nearest lies 1,000 ft off", () => {
    const monthsOf = new Map(stationTables.map((table) => [table.stationId, table.meanTemperatureF]));
    const western = new Set(["WA", "OR", "CA", "NV", "ID", "MT", "WY", "UT", "CO", "AZ", "NM"]);
    const plain = stations.map((each) => ({ ...each, hasNormals: true, doubt: null }));
    let count = 0;
    const squares = { byDistance: 0, byBoth: 0 };
    for (const left of plain) {
      if (!western.has(left.state)) continue;
      const others = plain.filter((each) => each.id !== left.id);
      const byDistance = chooseStation({ place: left, stations: others })[0]!;
      if (Math.abs(byDistance.elevationFt - left.elevationFt) < 1000) continue;
      const byBoth = chooseStation({ place: left, elevationFt: left.elevationFt, stations: others })[0]!;
      const square = (id: string) =>
        monthsOf.get(left.id)!.reduce((sum, meanF, month) => sum + (meanF - monthsOf.get(id)![month]!) ** 2, 0) / 12;
      squares.byDistance += square(byDistance.id);
      squares.byBoth += square(byBoth.id);
      count += 1;
    }
    expect(count).toBeGreaterThan(40);
    expect(Math.sqrt(squares.byBoth / count)).toBeLessThan(0.6 * Math.sqrt(squares.byDistance / count));
  });
});
