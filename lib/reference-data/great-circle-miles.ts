import { METERS_PER_FOOT } from "#lib/units/conversions.ts";

/** Mean radius of the earth, 6,371,008.8 m (IUGG, from memory), in statute miles of 5,280 ft. */
const EARTH_RADIUS_MILES = 6_371_008.8 / METERS_PER_FOOT / 5280;
const RADIANS_PER_DEGREE = Math.PI / 180;

/** A point on the earth, north and east positive. */
export interface Point {
  latitudeDegrees: number;
  longitudeDegrees: number;
}

/**
 * Distance between two points along the surface of a sphere, in miles.
 * d = 2 r asin √(sin²(Δφ/2) + cos φ1 cos φ2 sin²(Δλ/2)). Source: derived (haversine). Left out: flattening, under 0.6 %.
 */
export function greatCircleMiles(from: Point, to: Point): number {
  const fromLatitude = from.latitudeDegrees * RADIANS_PER_DEGREE;
  const toLatitude = to.latitudeDegrees * RADIANS_PER_DEGREE;
  const halfWest = ((to.longitudeDegrees - from.longitudeDegrees) * RADIANS_PER_DEGREE) / 2;
  const haversine =
    Math.sin((toLatitude - fromLatitude) / 2) ** 2 +
    Math.cos(fromLatitude) * Math.cos(toLatitude) * Math.sin(halfWest) ** 2;
  return 2 * EARTH_RADIUS_MILES * Math.asin(Math.min(1, Math.sqrt(haversine)));
}
