import { type Draft, numberAt } from "../draft.ts";

/** Pressures worth reading: 25 Pa first, because one step there is a test; then from the highest down. Source: practice. */
const WORTH_READING_PA = [25, 50, 35, 18, 12] as const;
/** A step this near counts as read. */
const NEAR_RATIO = 0.2;

/** About which duct pressure the next step should be taken; nothing once the usual ones are there. */
export function nextPressurePa(points: readonly Draft[]): number | undefined {
  const read = points.flatMap((point) => Math.abs(numberAt(point, "ductPressurePa") ?? 0) || []);
  return WORTH_READING_PA.find((pressurePa) => !read.some((each) => Math.abs(each / pressurePa - 1) < NEAR_RATIO));
}
