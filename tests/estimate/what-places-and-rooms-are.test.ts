import { describe, expect, it } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import { createParameterSpace, fillParameters } from "#lib/estimate/parameter-space.ts";
import { createDrawSource } from "#lib/numeric/create-draw-source.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { expectClose } from "#tests/expect-close.ts";
import { exampleWithReference } from "./example-jobs.ts";

const CRAWL = "mixed-crawlspace-heat-pump.json";

describe("places and rooms by one balance", () => {
  it("derived: a crawlspace is as far from the rooms as it gives little back, b = 1 − F", async () => {
    const { job, reference } = await exampleWithReference(CRAWL);
    const place = job.places.findIndex(({ kind }) => kind.endsWith("crawlspace"));
    const factorWith = async (regainFactor: number) => {
      const places = job.places.map((each, index) =>
        index === place ? { ...each, regainFactor, unconditionedFactor: undefined } : each,
      );
      const { assumptions } = await estimate({ ...job, places }, reference);
      return assumptions.find(({ path }) => path === `#/places/${place}/unconditionedFactor`)!.value;
    };
    expect(await factorWith(0.2)).toBeCloseTo(0.8, 12);
    expect(await factorWith(0.7)).toBeCloseTo(0.3, 12);
  });

  it("rooms in a dry summer are drier than half, and what the coil takes out is felt more", async () => {
    const { job } = await exampleWithReference(CRAWL);
    const bare = {
      ...job,
      house: { ...job.house, coolingHumidityShare: undefined },
      systems: job.systems.map((system) => ({
        ...system,
        cooling: { ...system.cooling!, sensibleHeatRatio: undefined },
      })),
    };
    const assumedIn = async (zip: string) => {
      const there = { ...bare, house: { ...bare.house, zip, elevationFt: undefined } };
      const { assumptions } = await estimate(there, await loadReferenceData(there));
      const of = (path: string) => Number(assumptions.find((each) => each.path === path)!.value);
      return { humidity: of("#/house/coolingHumidityShare"), felt: of("#/systems/0/cooling/sensibleHeatRatio") };
    };
    const [phoenix, houston] = [await assumedIn("85004"), await assumedIn("77002")];
    expect(houston).toEqual({ humidity: 0.5, felt: 0.75 });
    expect(phoenix.humidity).toBeGreaterThan(0.3);
    expect(phoenix.humidity).toBeLessThan(0.45);
    expect(phoenix.felt).toBeGreaterThan(0.8);
  });
});

describe("draws of a bound [jcgm-101 §6.4.2, rectangular distribution]", () => {
  it("lie anywhere within √3 standard uncertainties alike", () => {
    const space = createParameterSpace();
    space.add({
      key: "bound",
      group: "instrument",
      base: 0,
      spread: { shape: "rectangular", standardUncertainty: 1, min: -9, max: 9 },
    });
    const source = createDrawSource(5);
    const normals = new Float64Array(1);
    const out = new Float64Array(1);
    const drawn = Array.from({ length: 20_000 }, (_, k) => {
      source.fillNormals(k, normals);
      fillParameters({ parameters: space.parameters, normals, out });
      return out[0]!;
    }).sort((a, b) => a - b);
    const bound = Math.sqrt(3);
    expect(Math.max(...drawn)).toBeLessThanOrEqual(bound);
    for (const share of [0.1, 0.3, 0.7, 0.9]) {
      expectClose({
        actual: drawn[Math.floor(share * drawn.length)]!,
        expected: bound * (2 * share - 1),
        relativeTolerance: 0.05,
        reason: "quantiles of 20,000 draws",
      });
    }
  });
});
