import type { ClaimedFigures } from "#lib/estimate/estimate-claimed-figures.ts";
import type { Ranged } from "#lib/job/result/ranged.ts";

/** Claimed numbers by path: value alone, or with the 10th and 90th percentile. */
export type ClaimedNumbers = Record<string, number[]>;

const isRanged = (value: unknown): value is Ranged =>
  typeof value === "object" && value !== null && "value" in value && typeof value.value === "number";

function collect(value: unknown, path: string, out: ClaimedNumbers): void {
  if (isRanged(value))
    out[path] =
      value.p10 === undefined || value.p90 === undefined ? [value.value] : [value.value, value.p10, value.p90];
  else if (typeof value === "number") out[path] = [value];
  else if (typeof value === "object" && value !== null)
    for (const [key, each] of Object.entries(value)) collect(each, `${path}/${key}`, out);
}

/** The numbers of a result that a program pays for or checks. Fuels that are not used are left out. */
export function claimedNumbers(result: ClaimedFigures): ClaimedNumbers {
  const out: ClaimedNumbers = {};
  collect(result.leakage, "leakage", out);
  for (const system of result.systems) {
    for (const mode of ["heating", "cooling"] as const) {
      const distribution = system.distribution[mode];
      if (!distribution) continue;
      for (const name of ["seasonalBefore", "seasonalAfter"] as const)
        collect(distribution[name], `systems/${system.id}/${mode}/${name}`, out);
    }
  }
  for (const site of result.sites) out[`sites/${site.id}/cfm25`] = [site.cfm25.value];
  collect(result.energy, "energy", out);
  collect(result.savings, "savings", out);
  if (result.verified) {
    collect(result.verified.differenceCfm25, "verified/differenceCfm25", out);
    collect(result.verified.reductionShare, "verified/reductionShare", out);
  }
  for (const [path, numbers] of Object.entries(out))
    if (/^(energy|savings)\//.test(path) && numbers.every((each) => each === 0)) delete out[path];
  return out;
}
