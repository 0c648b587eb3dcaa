import { createDrawSource } from "#lib/numeric/create-draw-source.ts";

/** Seeded chance of one house: its numbers depend on the seed and the house alone. */
export interface Chance {
  uniform(low: number, high: number): number;
  /** Median 1. */
  lognormal(spread: number): number;
  normal(): number;
  isTrue(probability: number): boolean;
  pick<Item>(items: readonly Item[]): Item;
  random(): number;
}

const NUMBERS_PER_HOUSE = 4000;

export function chanceOf(seed: number, house: number): Chance {
  const uniforms = new Float64Array(NUMBERS_PER_HOUSE);
  const normals = new Float64Array(NUMBERS_PER_HOUSE);
  createDrawSource(seed).fillUniforms(house, uniforms);
  createDrawSource(seed + 1_000_003).fillNormals(house, normals);
  let nextUniform = 0;
  let nextNormal = 0;
  const random = () => {
    if (nextUniform === NUMBERS_PER_HOUSE) throw new Error("A house used more chance than it has");
    return uniforms[nextUniform++]!;
  };
  const normal = () => {
    if (nextNormal === NUMBERS_PER_HOUSE) throw new Error("A house used more chance than it has");
    return normals[nextNormal++]!;
  };
  return {
    random,
    normal,
    uniform: (low, high) => low + (high - low) * random(),
    lognormal: (spread) => Math.exp(spread * normal()),
    isTrue: (probability) => random() < probability,
    pick: (items) => items[Math.floor(random() * items.length)]!,
  };
}
