import type { PlaceModel } from "../complete/complete-places.ts";

/**
 * The temperature of each place as a straight line of what drives it:
 * t = constant + outdoor·t_out + sun·I + ground·t_ground + night·(1 at night).
 * It is the unconditioned-space factor (zone-temperature) or, for an attic, its energy balance (attic-temperature),
 * written once a draw so that a bin costs a few multiplications. A test holds it to both methods.
 */
export interface ZoneCoefficients {
  readonly constant: Float64Array;
  readonly outdoor: Float64Array;
  readonly sun: Float64Array;
  readonly ground: Float64Array;
  readonly night: Float64Array;
}

export function createZoneCoefficients(placesCount: number): ZoneCoefficients {
  const column = () => new Float64Array(placesCount);
  return { constant: column(), outdoor: column(), sun: column(), ground: column(), night: column() };
}

/** Roof conductance, Btu/(h·ft²·°F), and outside film of a sol-air temperature. Source: practice. */
const ROOF_U_VALUE = 0.5;
const SOL_AIR_FILM = 3;
/** Clear nights cool a roof by about 7 °F; about half of all nights are clear. Source: practice. */
const NIGHT_SKY_COOLING_F = 3.5;
const VENTILATION_BTU_PER_H_PER_CFM_F = 1.08;

/** Fills the coefficients for one indoor temperature and one draw of the parameters. */
export function fillZoneCoefficients({
  places,
  parameters,
  indoorF,
  out,
}: {
  places: readonly PlaceModel[];
  parameters: Float64Array;
  indoorF: number;
  out: ZoneCoefficients;
}): void {
  for (let p = 0; p < places.length; p++) {
    const place = places[p]!;
    if (place.isAttic) {
      const ventilation = VENTILATION_BTU_PER_H_PER_CFM_F * parameters[place.atticVentilationAt]!;
      const total = 1 / place.ceilingRValue + ROOF_U_VALUE + ventilation;
      out.constant[p] = indoorF / place.ceilingRValue / total;
      out.outdoor[p] = (ROOF_U_VALUE + ventilation) / total;
      out.sun[p] = (ROOF_U_VALUE * place.roofAbsorptance) / SOL_AIR_FILM / total;
      out.ground[p] = 0;
      out.night[p] = (-ROOF_U_VALUE * NIGHT_SKY_COOLING_F) / total;
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
