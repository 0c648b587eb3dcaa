import { airDensityCard } from "./cards/air-density.ts";
import type { MethodCard } from "./method-card.ts";

/** Every calculation of the catalogue, in the order of the trip of the data. */
export const METHODS: readonly MethodCard[] = [airDensityCard];
