import { normalCdf } from "#lib/numeric/distributions.ts";

/** What an uncertain value is about; the drivers of a range are told by these. */
export const DRIVER_GROUPS = {
  instrument: {
    title: "Leakage test",
    nextMove: "Repeat the leakage test at several pressures with a calibrated fan.",
  },
  outside: {
    title: "Share that reaches outside",
    nextMove: "Test the leakage to outside, or measure the zone pressures.",
  },
  sites: {
    title: "Which leak is how large",
    nextMove: "Test supply and return apart, or read a pressure pan at each register.",
  },
  operating: {
    title: "Pressure in the ducts while running",
    nextMove: "Measure the supply and return static pressures.",
  },
  airflow: { title: "Fan flow", nextMove: "Measure the fan flow." },
  ducts: { title: "Duct surface and insulation", nextMove: "Measure the length, size and insulation of the ducts." },
  zones: { title: "Temperature around the ducts", nextMove: "Log the temperature around the ducts for a week." },
  regain: {
    title: "Heat that finds its way back",
    nextMove: "Note what is insulated around the ducts: floor, walls or ceiling.",
  },
  equipment: { title: "Heating and cooling equipment", nextMove: "Read capacity and efficiency from the nameplates." },
  loads: { title: "How much the house heats and cools", nextMove: "Get a year of energy bills." },
  repairs: { title: "How well the repairs hold", nextMove: "Look at the leaks closely before pricing them." },
  model: {
    title: "The calculation itself",
    nextMove: "Compare a year of bills before the work with a year after it.",
  },
  prices: { title: "Energy prices", nextMove: "Take the marginal price from a bill." },
} as const;

export type DriverGroup = keyof typeof DRIVER_GROUPS;

/** A bound over its standard uncertainty. Source: jcgm-100 §4.3.7. */
const RECTANGULAR = Math.sqrt(3);

/**
 * How a parameter strays around its base. `relative` is lognormal with the base as median, `absolute` is normal,
 * `rectangular` anywhere within a bound alike: an instrument's accuracy (jcgm-101 §6.4.2), the bound √3 standard
 * uncertainties away.
 */
export interface Spread {
  shape: "relative" | "absolute" | "rectangular";
  standardUncertainty: number;
  min: number;
  max: number;
}

export interface Parameter {
  key: string;
  group: DriverGroup;
  base: number;
  spread: Spread;
}

/** A list of uncertain values with places in one number array, so that a draw is one array and nothing is allocated. */
export interface ParameterSpace {
  readonly parameters: readonly Parameter[];
  /** Adds a value and returns its index. */
  add(parameter: Parameter): number;
  base(): Float64Array;
}

export function createParameterSpace(): ParameterSpace {
  const parameters: Parameter[] = [];
  return {
    parameters,
    add(parameter) {
      parameters.push(parameter);
      return parameters.length - 1;
    },
    base: () => Float64Array.from(parameters, (parameter) => parameter.base),
  };
}

/** One draw: standard normal numbers in, parameter values out, each held within its limits. */
export function fillParameters({
  parameters,
  normals,
  out,
}: {
  parameters: readonly Parameter[];
  normals: Float64Array;
  out: Float64Array;
}): void {
  for (let i = 0; i < parameters.length; i++) {
    const { base, spread } = parameters[i]!;
    const z = normals[i]!;
    const value =
      spread.shape === "relative"
        ? base * Math.exp(spread.standardUncertainty * z)
        : spread.shape === "absolute"
          ? base + spread.standardUncertainty * z
          : base + spread.standardUncertainty * RECTANGULAR * (2 * normalCdf(z) - 1);
    out[i] = value < spread.min ? spread.min : Math.min(value, spread.max);
  }
}
