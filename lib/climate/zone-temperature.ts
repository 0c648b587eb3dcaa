import { refuse } from "#lib/errors/input-problem.ts";
import { requireBetween } from "#lib/errors/require-number.ts";
import type { Fahrenheit, Ratio, Share } from "#lib/units/quantity.ts";

const HOUSE_TEMPERATURES = { unit: "°F", low: -80, high: 200 };

/**
 * Temperature of an unconditioned place beside the house.
 * t = t_in − b (t_in − t_x); t_x the outdoor temperature, or mixed with the ground's by the ground's share. b is 0 as
 * warm as the house, 1 as cold as its surroundings, a little above 1 where a place gets hotter or colder than they.
 * Source: iso-13789 (form of, from memory). Left out: sun (see attic-temperature) and heat stored from hour to hour;
 * places on the ground follow the ground's own late and small swing when its temperature of the month is given.
 * @throws InputProblem when a value is impossible, or a ground share stands without a ground temperature.
 */
export function zoneTemperature({
  indoorTemperatureF,
  outdoorTemperatureF,
  unconditionedFactor,
  groundTemperatureF,
  groundShare = 0,
}: {
  indoorTemperatureF: Fahrenheit;
  outdoorTemperatureF: Fahrenheit;
  unconditionedFactor: Ratio;
  groundTemperatureF?: Fahrenheit;
  groundShare?: Share;
}): { zoneTemperatureF: Fahrenheit } {
  requireBetween({
    field: "indoorTemperatureF",
    label: "Indoor temperature",
    value: indoorTemperatureF,
    ...HOUSE_TEMPERATURES,
  });
  requireBetween({
    field: "outdoorTemperatureF",
    label: "Outdoor temperature",
    value: outdoorTemperatureF,
    ...HOUSE_TEMPERATURES,
  });
  requireBetween({
    field: "unconditionedFactor",
    label: "Unconditioned-space factor",
    value: unconditionedFactor,
    low: 0,
    high: 1.2,
  });
  requireBetween({
    field: "groundShare",
    label: "Share of ground around the place",
    value: groundShare,
    low: 0,
    high: 1,
  });
  if (groundTemperatureF === undefined && groundShare > 0) {
    refuse({
      field: "groundTemperatureF",
      detail: `${groundShare} of the surroundings is ground, but its temperature is missing`,
      fix: "Enter the ground temperature of the month, or leave the ground share out.",
      code: "missing",
    });
  }
  const groundF = groundTemperatureF ?? outdoorTemperatureF;
  requireBetween({ field: "groundTemperatureF", label: "Ground temperature", value: groundF, ...HOUSE_TEMPERATURES });
  const surroundingsF = (1 - groundShare) * outdoorTemperatureF + groundShare * groundF;
  return { zoneTemperatureF: indoorTemperatureF - unconditionedFactor * (indoorTemperatureF - surroundingsF) };
}
