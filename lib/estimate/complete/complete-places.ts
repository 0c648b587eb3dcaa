import { ATTIC_DEFAULTS } from "#lib/climate/attic-temperature.ts";
import { regainFactorOf } from "#lib/distribution/regain.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { PLACE_LABELS } from "#lib/job/place.ts";
import type { Place } from "#lib/job/place-schema.ts";
import type { Ledger } from "../ledger.ts";
import type { ParameterSpace } from "../parameter-space.ts";
import { PLACE_DEFAULTS } from "./place-defaults.ts";

/** One place around the ducts with its gaps filled. Names ending in `At` are places in the parameter array. */
export interface PlaceModel {
  id: string;
  kind: Place["kind"];
  label: string;
  isInsideBoundary: boolean;
  isConditioned: boolean;
  isAttic: boolean;
  groundShare: number;
  ceilingRValue: number;
  roofUValue: number;
  roofAbsorptance: number;
  regainAt: number;
  factorAt: number;
  atticVentilationAt: number;
  toOutsideShareAt: number;
}

/** A place before the tests have said how much of its leaks reaches outside: see completeOutsideShares. */
export type PlaceBefore = Omit<PlaceModel, "toOutsideShareAt">;

const practice = { sourceId: "practice" } as const;
/** Roofs: dark .85, light .55. Source: practice. */
const ROOF_ABSORPTANCE = { dark: 0.85, light: 0.55 } as const;

interface Input {
  place: Place;
  pointer: string;
  ledger: Ledger;
  space: ParameterSpace;
}

/** What an attic's own balance needs beside its insulation and color. */
function takeAttic(
  { place, pointer, ledger }: Input,
  name: string,
): { roofUValue: number; ventilationCfmPerFt2: number } {
  const take = (key: "roofUValue" | "ventilationCfmPerFt2", title: string, reason: string): number => {
    const { value, unit, source, low, high } = ATTIC_DEFAULTS[key];
    if (place.kind !== "attic") return value;
    return ledger.take<number>(place[key], {
      path: `${pointer}/${key}`,
      title,
      value,
      unit,
      reason,
      source,
      low,
      high,
    });
  };
  return {
    roofUValue: take(
      "roofUValue",
      `Heat that the roof over the ${name} lets through`,
      "Shingles on boards without insulation.",
    ),
    ventilationCfmPerFt2: take(
      "ventilationCfmPerFt2",
      `Outdoor air through the ${name}, for each square foot of ceiling`,
      "A common figure with vents at eaves and ridge.",
    ),
  };
}

function completePlace(input: Input): PlaceBefore {
  const { place, pointer, ledger, space } = input;
  const defaults = PLACE_DEFAULTS[place.kind];
  const name = place.label ?? PLACE_LABELS[place.kind];
  const isAttic = place.kind === "attic";
  const isConditioned = place.kind === "conditioned";
  const insulation =
    place.kind.endsWith("crawlspace") || place.kind === "basement"
      ? ledger.take(place.insulation, {
          path: `${pointer}/insulation`,
          title: `Insulation of the ${name}`,
          value: "none",
          unit: "",
          reason: "Nothing was said of insulation there.",
          source: practice,
        })
      : "none";
  const knownRegain = regainFactorOf({ placeKind: place.kind, insulation });
  const regain = isConditioned
    ? 1
    : ledger.take(place.regainFactor, {
        path: `${pointer}/regainFactor`,
        title: `Heat that finds its way back from the ${name}`,
        value: knownRegain,
        unit: "ratio",
        reason: "A common figure for this kind of place and its insulation.",
        source: practice,
        low: 0.6 * knownRegain,
        high: Math.min(1, 1.4 * knownRegain),
      });
  const attic = takeAttic(input, name);
  const usualFactor = defaults.isFactorByRegain ? 1 - regain : defaults.unconditionedFactor;
  const factor =
    isAttic || isConditioned
      ? usualFactor
      : ledger.take(place.unconditionedFactor, {
          path: `${pointer}/unconditionedFactor`,
          title: `How cold or hot the ${name} gets`,
          value: usualFactor,
          unit: "ratio",
          reason: defaults.isFactorByRegain
            ? "0 would be as warm as the house, 1 as cold as outdoors. By one balance of the place with what comes back from it: both are 1 together."
            : "0 would be as warm as the house, 1 as cold as outdoors; a common figure for this kind of place.",
          source: { sourceId: defaults.isFactorByRegain ? ("derived" as const) : ("iso-13789" as const) },
          low: Math.max(0, usualFactor - 1.28 * defaults.unconditionedFactorDoubt),
          high: usualFactor + 1.28 * defaults.unconditionedFactorDoubt,
        });
  return {
    id: place.id,
    kind: place.kind,
    label: name,
    isInsideBoundary: defaults.isInsideBoundary,
    isConditioned,
    isAttic,
    groundShare: insulation === "walls" ? defaults.groundShareBehindInsulatedWalls : defaults.groundShare,
    ceilingRValue: isAttic
      ? ledger.take(place.ceilingRValue, {
          path: `${pointer}/ceilingRValue`,
          title: `Insulation on the floor of the ${name}`,
          value: 19,
          unit: "h·ft²·°F/Btu",
          reason: "A common figure in houses whose attic was not measured.",
          source: practice,
          low: 11,
          high: 38,
        })
      : 19,
    roofUValue: attic.roofUValue,
    roofAbsorptance: isAttic
      ? ROOF_ABSORPTANCE[
          ledger.take(place.roofColor, {
            path: `${pointer}/roofColor`,
            title: `Color of the roof over the ${name}`,
            value: "dark",
            unit: "",
            reason: "Most roofs are dark.",
            source: practice,
          })
        ]
      : ROOF_ABSORPTANCE.dark,
    regainAt: space.add({
      key: `places/${place.id}/regain`,
      group: "regain",
      base: regain,
      spread: { shape: "absolute", standardUncertainty: isConditioned ? 0 : 0.25 * regain, min: 0, max: 1 },
    }),
    factorAt: space.add({
      key: `places/${place.id}/factor`,
      group: "zones",
      base: factor,
      spread: {
        shape: "absolute",
        standardUncertainty: isConditioned || isAttic ? 0 : defaults.unconditionedFactorDoubt,
        min: 0,
        max: 1.2,
      },
    }),
    atticVentilationAt: space.add({
      key: `places/${place.id}/ventilation`,
      group: "zones",
      base: attic.ventilationCfmPerFt2,
      spread: { shape: "relative", standardUncertainty: isAttic ? 0.4 : 0, min: 0.02, max: 1 },
    }),
  };
}

/** Where a leak goes that reaches outside though no duct runs outside the boundary: straight outdoors. */
export const OUTDOORS_PLACE_ID = "outdoors";

/**
 * Every place with its gaps filled, each filled gap listed. Where all ducts run inside the house's pressure boundary, a
 * place “outdoors” is added for leakage that was measured to reach outside all the same.
 */
export function completePlaces({
  job,
  ledger,
  space,
}: {
  job: Job;
  ledger: Ledger;
  space: ParameterSpace;
}): PlaceBefore[] {
  const places = job.places.map((place, index) =>
    completePlace({ place, pointer: `#/places/${index}`, ledger, space }),
  );
  if (places.some((place) => !place.isInsideBoundary)) return places;
  return [
    ...places,
    completePlace({
      place: { id: OUTDOORS_PLACE_ID, kind: "outside", regainFactor: 0, unconditionedFactor: 1 },
      pointer: "#/places/-",
      ledger,
      space,
    }),
  ];
}
