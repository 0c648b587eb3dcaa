import type { Job } from "#lib/job/job-schema.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import type { DollarSplit } from "#lib/pictures/hundred-dollars.ts";

export type Mode = "heating" | "cooling";

/**
 * Where each $100 for heating or cooling goes, for the whole house: the systems' own destinations weighted by what each
 * uses, which is its share of the need over its seasonal efficiency (derived). Left out: systems of one mode with fuels
 * of different price, and the blower's power. Undefined without such a system, or when a part is a gain and not a loss.
 */
export function dollarSplit({
  job,
  result,
  mode,
  when,
}: {
  job: Job;
  result: Result;
  mode: Mode;
  when: "before" | "after";
}): DollarSplit | undefined {
  const parts = result.systems.flatMap((system) => {
    const season = system.distribution[mode];
    if (!season) return [];
    const efficiency = (when === "before" ? season.seasonalBefore : season.seasonalAfter).value;
    const share = job.systems.find(({ id }) => id === system.id)?.servedFloorShare ?? 1 / job.systems.length;
    const destination = when === "before" ? season.destinationBefore : season.destinationAfter;
    return efficiency > 0 ? [{ weight: share / efficiency, destination }] : [];
  });
  const total = parts.reduce((sum, { weight }) => sum + weight, 0);
  if (!(total > 0)) return undefined;
  const mean = (key: "roomsShare" | "regainedShare" | "outsideShare") =>
    (100 * parts.reduce((sum, { weight, destination }) => sum + weight * destination[key], 0)) / total;
  const split = { roomsUsd: mean("roomsShare"), regainedUsd: mean("regainedShare"), lostUsd: mean("outsideShare") };
  return Object.values(split).every((part) => part >= 0) ? { ...split, blowerUsd: 0 } : undefined;
}

/** The mode that costs more: the five months around January against the five around July. */
export function mainMode({ job, result }: { job: Job; result: Result }): Mode {
  const cost = (months: readonly number[]) => months.reduce((sum, month) => sum + monthCost({ job, result, month }), 0);
  const modes = (["heating", "cooling"] as const).filter((mode) =>
    result.systems.some(({ distribution }) => distribution[mode]),
  );
  if (modes.length === 1) return modes[0]!;
  return cost([10, 11, 0, 1, 2]) >= cost([4, 5, 6, 7, 8]) ? "heating" : "cooling";
}

type PriceKey = "electricityUsdPerKWh" | "naturalGasUsdPerTherm" | "propaneUsdPerGallon" | "fuelOilUsdPerGallon";

/**
 * The price of a fuel as the estimate took it: told in the job, or listed among the assumptions. Where it goes by steps
 * or time of day: what a saved unit is worth over the year.
 */
function priceUsd({ job, result }: { job: Job; result: Result }, key: PriceKey): number {
  const { electricity, naturalGas } = result.energy;
  const [fuel, savedUnits] =
    key === "electricityUsdPerKWh"
      ? ["electricity", electricity.savedKWh.value]
      : ["naturalGas", key === "naturalGasUsdPerTherm" ? naturalGas.savedTherms.value : 0];
  const charge = result.charges.find((each) => each.fuel === fuel && each.rateKind !== "flat");
  if (charge && savedUnits !== 0) return charge.savedUsdPerYear / savedUnits;
  const assumed = result.assumptions.find(({ path }) => path === `#/rates/${key}`)?.value;
  return job.rates?.[key] ?? (typeof assumed === "number" ? assumed : 0);
}

/** What heating, cooling and blower cost in one month of a normal year, before the work. */
function monthCost({ job, result, month }: { job: Job; result: Result; month: number }): number {
  const energy = result.energyByMonth[month]!;
  return (
    energy.electricity.beforeKWh.value * priceUsd({ job, result }, "electricityUsdPerKWh") +
    energy.naturalGas.beforeTherms.value * priceUsd({ job, result }, "naturalGasUsdPerTherm") +
    energy.propane.beforeGallons.value * priceUsd({ job, result }, "propaneUsdPerGallon") +
    energy.fuelOil.beforeGallons.value * priceUsd({ job, result }, "fuelOilUsdPerGallon")
  );
}

/**
 * What one month's bill falls by. The ends of the range add the fuels' own ends, as if they moved together, which the
 * size of the leaks makes nearly true and which is never too narrow.
 */
export function monthSavedUsd({ job, result, month }: { job: Job; result: Result; month: number }): {
  value: number;
  p10?: number;
  p90?: number;
} {
  const energy = result.energyByMonth[month]!;
  const saved = [
    { of: energy.electricity.savedKWh, price: "electricityUsdPerKWh" as const },
    { of: energy.naturalGas.savedTherms, price: "naturalGasUsdPerTherm" as const },
    { of: energy.propane.savedGallons, price: "propaneUsdPerGallon" as const },
    { of: energy.fuelOil.savedGallons, price: "fuelOilUsdPerGallon" as const },
  ];
  const sum = (at: "value" | "p10" | "p90") =>
    saved.reduce((total, { of, price }) => total + (of[at] ?? 0) * priceUsd({ job, result }, price), 0);
  const isDrawn = saved.every(({ of }) => of.p10 !== undefined && of.p90 !== undefined);
  return { value: sum("value"), ...(isDrawn ? { p10: sum("p10"), p90: sum("p90") } : {}) };
}
