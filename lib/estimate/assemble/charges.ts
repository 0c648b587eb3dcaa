import type { EnergyByFuel, FuelCharge } from "#lib/job/result/energy-result.ts";
import type { TraceStep } from "#lib/job/result/evidence-result.ts";
import { formatNumber } from "#lib/units/format.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { TariffModel } from "../complete/complete-tariffs.ts";
import { FUEL_LABELS, FUELS, type Fuel, SALE_UNIT } from "../fuels.ts";
import { outputKey } from "../kernel/write-outputs.ts";
import type { Evaluated } from "./energy.ts";

const usdPerUnit = (value: number): string => `$${formatNumber(value, { significantDigits: 3 })}`;

function sayPrice({ rate, otherUnitsPerMonth }: TariffModel, fuel: Fuel, savedPrice: number | null): string {
  const unit = SALE_UNIT[fuel];
  const saved =
    savedPrice === null ? "Nothing is saved of it." : `Saved, a ${unit} is worth ${usdPerUnit(savedPrice)}.`;
  return rate.kind === "tiered"
    ? `Priced in steps of use: the saving comes off the top of each month, above ${formatNumber(otherUnitsPerMonth)} ${unit} for everything else. ${saved}`
    : `Priced by time of day: each 8-hour shift of each month is counted at its own price. ${saved}`;
}

/** What each fuel costs before and after at the best estimates, and at which prices the saving was counted. */
export function chargesOf(house: HouseModel, { layout, outcome }: Evaluated, energy: EnergyByFuel): FuelCharge[] {
  const { before, saved } = {
    before: [
      energy.electricity.beforeKWh,
      energy.naturalGas.beforeTherms,
      energy.propane.beforeGallons,
      energy.fuelOil.beforeGallons,
    ],
    saved: [
      energy.electricity.savedKWh,
      energy.naturalGas.savedTherms,
      energy.propane.savedGallons,
      energy.fuelOil.savedGallons,
    ],
  };
  return FUELS.flatMap((fuel, f): FuelCharge[] => {
    if (!(before[f]!.value > 0)) return [];
    const read = (when: "before" | "after") => outcome.values[layout.at(outputKey.charge(fuel, when))]!;
    const savedUsdPerYear = read("before") - read("after");
    const units = saved[f]!.value;
    const tariff = house.prices.tariffs[f];
    return [
      {
        fuel,
        rateKind: tariff?.rate.kind ?? "flat",
        beforeUsdPerYear: read("before"),
        afterUsdPerYear: read("after"),
        savedUsdPerYear,
        explanation: tariff
          ? sayPrice(tariff, fuel, units === 0 ? null : savedUsdPerYear / units)
          : `Each ${SALE_UNIT[fuel]} at ${usdPerUnit(house.space.parameters[house.prices.priceAt[f]!]!.base)}, whenever it is used.`,
      },
    ];
  });
}

function rateInputs({ rate, otherUnitsPerMonth }: TariffModel): Record<string, number | string> {
  if (rate.kind === "tiered") {
    const steps = rate.steps.flatMap(({ upToUnits, usdPerUnit: price }, index) => [
      [`steps/${index}/upToUnits`, upToUnits ?? "no end"] as const,
      [`steps/${index}/usdPerUnit`, price] as const,
    ]);
    return { otherUnitsPerMonth, ...Object.fromEntries(steps) };
  }
  return Object.fromEntries(
    rate.usdPerUnitByShift.flatMap((row, month) =>
      row.map((price, shift) => [`usdPerUnitByShift/${month}/${shift}`, price] as const),
    ),
  );
}

/** One step of the trace a fuel whose price depends on how much or when. */
export function chargeSteps(house: HouseModel, charges: readonly FuelCharge[]): TraceStep[] {
  return charges.flatMap(({ fuel, beforeUsdPerYear, afterUsdPerYear, savedUsdPerYear }): TraceStep[] => {
    const tariff = house.prices.tariffs[FUELS.indexOf(fuel)];
    if (!tariff) return [];
    return [
      {
        id: `charge/${fuel}`,
        methodId: "energy-charge",
        title: `What the ${FUEL_LABELS[fuel]} costs before and after, without fixed charges`,
        inputs: rateInputs(tariff),
        outputs: { savedUsdPerYear, beforeUsdPerYear, afterUsdPerYear },
        source: { sourceId: "derived" },
      },
    ];
  });
}
