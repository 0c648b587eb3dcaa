import { AIR_SPECIFIC_HEAT, MINUTES_PER_HOUR, STANDARD_AIR_DENSITY } from "#lib/air/standard-air.ts";
import { ATTIC_DEFAULTS } from "#lib/climate/attic-temperature.ts";
import type { ZoneLines } from "#lib/distribution/weather-columns.ts";
import type { PlaceModel } from "../complete/complete-places.ts";

/** About half of all nights are clear. Source: practice. */
const CLEAR_NIGHT_SHARE = 0.5;
const VENTILATION_BTU_PER_H_PER_CFM_F = MINUTES_PER_HOUR * STANDARD_AIR_DENSITY.value * AIR_SPECIFIC_HEAT.value;

export function createZoneLines(places: readonly PlaceModel[]): ZoneLines {
  const column = () => new Float64Array(places.length);
  return {
    constant: column(),
    outdoor: column(),
    sun: column(),
    ground: column(),
    night: column(),
    outdoorMoistureShare: column(),
  };
}

/**
 * The temperature of each place as a straight line of the weather, for one indoor temperature and one draw.
 * It is the unconditioned-space factor (zone-temperature) or, for an attic, its energy balance (attic-temperature);
 * a test holds it to both methods. Of the moisture of outdoor air in a place only what the coil takes out counts.
 * Allocates nothing.
 */
export function fillZoneLines({
  places,
  parameters,
  indoorF,
  coilMoistureShare,
  out,
}: {
  places: readonly PlaceModel[];
  parameters: Float64Array;
  indoorF: number;
  coilMoistureShare: number;
  out: ZoneLines;
}): void {
  for (let p = 0; p < places.length; p++) {
    const place = places[p]!;
    out.outdoorMoistureShare[p] =
      coilMoistureShare * (place.isInsideBoundary ? parameters[place.toOutsideShareAt]! : 1);
    if (place.isAttic) {
      const { roofUValue } = place;
      const ventilation = VENTILATION_BTU_PER_H_PER_CFM_F * parameters[place.atticVentilationAt]!;
      const total = 1 / place.ceilingRValue + roofUValue + ventilation;
      out.constant[p] = indoorF / place.ceilingRValue / total;
      out.outdoor[p] = (roofUValue + ventilation) / total;
      out.sun[p] = (roofUValue * place.roofAbsorptance) / ATTIC_DEFAULTS.outsideFilmUValue.value / total;
      out.ground[p] = 0;
      out.night[p] = (-roofUValue * CLEAR_NIGHT_SHARE * ATTIC_DEFAULTS.clearNightCoolingF.value) / total;
    } else {
      const factor = parameters[place.factorAt]!;
      out.constant[p] = indoorF * (1 - factor);
      out.outdoor[p] = factor * (1 - place.groundShare);
      out.sun[p] = 0;
      out.ground[p] = factor * place.groundShare;
      out.night[p] = 0;
    }
  }
}
