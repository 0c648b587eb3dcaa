import { airDensityCard } from "./cards/air-density.ts";
import { changePointFitCard } from "./cards/change-point-fit.ts";
import { degreeDaysFromHourlyCard } from "./cards/degree-days-from-hourly.ts";
import { degreeDaysFromMonthlyMeansCard } from "./cards/degree-days-from-monthly-means.ts";
import type { MethodCard } from "./method-card.ts";

/** Every calculation of the catalogue, in the order of the trip of the data. */
export const METHODS: readonly MethodCard[] = [
  airDensityCard,
  degreeDaysFromMonthlyMeansCard,
  degreeDaysFromHourlyCard,
  changePointFitCard,
];
