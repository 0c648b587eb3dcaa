import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { xoroshiro128plusFromState } from "pure-rand/generator/xoroshiro128plus";
import { refuse } from "#lib/errors/input-problem.ts";

/** Seeded chance. Each draw has a stream of its own, so it does not matter in which order or worker draws are made. */
export interface DrawSource {
  /** Fills `out` with independent uniform numbers, each above 0 and below 1. */
  fillUniforms(drawIndex: number, out: Float64Array): void;
  /** Fills `out` with independent normal numbers of mean 0 and standard deviation 1. */
  fillNormals(drawIndex: number, out: Float64Array): void;
}

/** Half of the generator's step, so that no uniform number is 0. */
const HALF_STEP = 2 ** -54;

/** Mixes the bits of a 32-bit word so that neighboring seeds and draws start far apart (finalizer of MurmurHash3). */
function mixBits(word: number): number {
  let mixed = word ^ (word >>> 16);
  mixed = Math.imul(mixed, 0x85ebca6b);
  mixed ^= mixed >>> 13;
  mixed = Math.imul(mixed, 0xc2b2ae35);
  return mixed ^ (mixed >>> 16);
}

/**
 * A source of seeded draws: the numbers of draw k depend on the seed and on k alone.
 * Uniform numbers by xoroshiro128+ started from a mix of seed and draw; normal numbers by the transform of Box and
 * Muller over pairs, so the first numbers of a draw stay the same when more are asked for. Source: jcgm-101 §6.4
 * (generators for a Monte Carlo of uncertainty). Not for cryptography.
 * @throws InputProblem when the seed is not a whole number from 0 to 2^53 − 1.
 */
export function createDrawSource(seed: number): DrawSource {
  if (!(Number.isSafeInteger(seed) && seed >= 0)) {
    refuse({
      field: "seed",
      detail: `Seed must be a whole number from 0, not ${seed}`,
      fix: "Enter a whole number, such as 1.",
    });
  }
  const low = mixBits(seed >>> 0);
  const high = mixBits((Math.floor(seed / 2 ** 32) >>> 0) ^ 0x9e3779b9);

  const streamOf = (drawIndex: number) => {
    const first = mixBits(low ^ Math.imul(drawIndex + 1, 0x9e3779b1));
    const second = mixBits(high ^ Math.imul(first, 0x85ebca77) ^ drawIndex);
    const third = mixBits(first ^ Math.imul(second, 0xc2b2ae3d));
    // An odd word keeps the state away from all zeros, where the generator would stand still.
    return xoroshiro128plusFromState([first, second, third, mixBits(second + third) | 1]);
  };

  return {
    fillUniforms(drawIndex, out) {
      const stream = streamOf(drawIndex);
      for (let i = 0; i < out.length; i += 1) out[i] = uniformFloat64(stream) + HALF_STEP;
    },
    fillNormals(drawIndex, out) {
      const stream = streamOf(drawIndex);
      for (let i = 0; i < out.length; i += 2) {
        const radius = Math.sqrt(-2 * Math.log(uniformFloat64(stream) + HALF_STEP));
        const angle = 2 * Math.PI * uniformFloat64(stream);
        out[i] = radius * Math.cos(angle);
        if (i + 1 < out.length) out[i + 1] = radius * Math.sin(angle);
      }
    },
  };
}
