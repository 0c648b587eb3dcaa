import type { ClimateInput } from "#lib/pictures/climate-scene.ts";
import type { EnergyMonthsInput } from "#lib/pictures/energy-months.ts";
import type { HundredDollarsInput } from "#lib/pictures/hundred-dollars.ts";
import type { LeaksRankedInput } from "#lib/pictures/leaks-ranked.ts";
import type { PriceFrontierInput } from "#lib/pictures/price-frontier.ts";
import type { SavingsDriversInput } from "#lib/pictures/savings-drivers.ts";
import type { SavingsRangeInput } from "#lib/pictures/savings-range.ts";
import type { TestPointsInput } from "#lib/pictures/test-points.ts";

/** Invented figures for the page of the design system; none of them was measured or calculated. */
export const HUNDRED_DOLLARS: HundredDollarsInput = {
  use: "heating",
  before: { roomsUsd: 63, regainedUsd: 9, lostUsd: 25, blowerUsd: 3 },
  after: { roomsUsd: 84, regainedUsd: 4, lostUsd: 9, blowerUsd: 3 },
};

const COEFFICIENT = 39.7;
const EXPONENT = 0.6;

export const TEST_POINTS: TestPointsInput = {
  points: [
    { id: "p1", number: 1, pressurePa: 48.6, flowCfm: 412 },
    { id: "p2", number: 2, pressurePa: 35.1, flowCfm: 334 },
    { id: "p3", number: 3, pressurePa: 24.8, flowCfm: 243, isDoubtful: true },
    { id: "p4", number: 4, pressurePa: 18.2, flowCfm: 228 },
    { id: "p5", number: 5, pressurePa: 12.4, flowCfm: 179 },
  ],
  fit: { coefficient: COEFFICIENT, exponent: EXPONENT },
  band: [10.5, 14, 19, 25, 34, 45, 57].map((pressurePa) => {
    const flowCfm = COEFFICIENT * pressurePa ** EXPONENT;
    const doubt = 0.03 + 0.06 * Math.abs(Math.log(pressurePa / 25));
    return { pressurePa, lowCfm: flowCfm * (1 - doubt), highCfm: flowCfm * (1 + doubt) };
  }),
  reading: { pressurePa: 25, flowCfm: 274, lowCfm: 260, highCfm: 288 },
};

export const SAVINGS_RANGE: SavingsRangeInput = { p10UsdPerYear: 190, p50UsdPerYear: 310, p90UsdPerYear: 430 };

export const SAVINGS_MAYBE_NOTHING: SavingsRangeInput = { p10UsdPerYear: -20, p50UsdPerYear: 46, p90UsdPerYear: 140 };

export const SAVINGS_DRIVERS: SavingsDriversInput = {
  savedUsdPerYear: 310,
  drivers: [
    { id: "attic", label: "attic temperature in July", lowUsdPerYear: 262, highUsdPerYear: 355 },
    { id: "fan", label: "fan flow, nameplate only", lowUsdPerYear: 233, highUsdPerYear: 391 },
    { id: "bills", label: "share of the bill that is heating", lowUsdPerYear: 255, highUsdPerYear: 360 },
    { id: "price", label: "price of gas next year", lowUsdPerYear: 288, highUsdPerYear: 330 },
    { id: "regain", label: "heat that comes back", lowUsdPerYear: 298, highUsdPerYear: 318 },
  ],
};

export const ENERGY_MONTHS: EnergyMonthsInput = {
  fuels: [
    {
      id: "gas",
      label: "natural gas",
      unit: "therms",
      before: [128, 106, 82, 44, 16, 3, 0, 0, 9, 38, 74, 116],
      after: [97, 80, 62, 33, 12, 2, 0, 0, 7, 29, 56, 88],
    },
    {
      id: "electricity",
      label: "electricity",
      unit: "kWh",
      before: [92, 78, 64, 58, 190, 420, 585, 540, 310, 86, 60, 84],
      after: [80, 69, 58, 52, 142, 318, 441, 408, 236, 70, 62, 74],
    },
  ],
};

export const LEAKS_RANKED: LeaksRankedInput = {
  leaks: [
    {
      id: "l1",
      number: 1,
      label: "supply plenum joint",
      placeLabel: "attic, at the air handler",
      cfm25: 121,
      lostUsdPerYear: 164,
      effort: "easy",
    },
    {
      id: "l2",
      number: 2,
      label: "living room boot to drywall",
      placeLabel: "attic, east end",
      cfm25: 38,
      lostUsdPerYear: 22,
      effort: "moderate",
    },
    {
      id: "l3",
      number: 3,
      label: "bedroom take-off",
      placeLabel: "attic, low under the roof",
      cfm25: 22,
      lostUsdPerYear: 19,
      effort: "hard",
    },
    {
      id: "l4",
      number: 4,
      label: "trunk seam",
      placeLabel: "attic",
      cfm25: 6,
      lostUsdPerYear: 5,
      effort: "moderate",
      isSealed: true,
    },
  ],
};

export const PRICE_FRONTIER: PriceFrontierInput = {
  todayCfm25: 274,
  targetCfm25: 66,
  points: [
    { id: "f1", label: "the big leak only", priceUsdCents: 42000, predictedCfm25: 150, p10Cfm25: 128, p90Cfm25: 176 },
    { id: "f2", label: "what we can reach", priceUsdCents: 84000, predictedCfm25: 84, p10Cfm25: 66, p90Cfm25: 108 },
    {
      id: "f3",
      label: "everything",
      priceUsdCents: 118000,
      predictedCfm25: 52,
      p10Cfm25: 40,
      p90Cfm25: 68,
      isChosen: true,
    },
    { id: "f4", label: "new return too", priceUsdCents: 205000, predictedCfm25: 41, p10Cfm25: 30, p90Cfm25: 56 },
  ],
};

const MEANS = [24, 28, 38, 49, 59, 69, 74, 72, 65, 53, 40, 28];

export const CLIMATE: ClimateInput = {
  stationLabel: "An invented station",
  months: MEANS.map((meanF, index) => ({ meanF, lowF: meanF - 8 - (index % 3), highF: meanF + 9 + (index % 4) })),
  bins: [
    [2, 42],
    [12, 190],
    [22, 640],
    [32, 1240],
    [42, 1310],
    [52, 1280],
    [62, 1480],
    [72, 1560],
    [82, 760],
    [92, 230],
    [102, 28],
  ].map(([temperatureF = 0, hours = 0]) => ({ temperatureF, hours })),
  heatingBalanceF: 60,
  coolingBalanceF: 70,
};
