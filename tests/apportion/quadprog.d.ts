/** The library ships no types. Arrays count from 1, as in its Fortran ancestor. */
declare module "quadprog" {
  export function solveQP(
    dMatrix: readonly (readonly number[])[],
    dVector: readonly number[],
    constraints: readonly (readonly number[])[],
    bounds: readonly number[],
    equalityCount: number,
  ): { solution: number[]; message: string };
}
