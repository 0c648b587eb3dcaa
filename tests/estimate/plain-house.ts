/**
 * A second, simpler estimate of one house, to hold the engine to: the cold attic furnace of the examples, all supply
 * ducts in the attic, the return in the rooms. Plain numbers, plain loops over the bins, the closed forms of METHODS; no
 * function of the engine is called. Only data are shared: the bins of the station, the job's own numbers.
 */

interface PlainWeather {
  month: ArrayLike<number>;
  temperatureF: ArrayLike<number>;
  hours: ArrayLike<number>;
  humidityRatio: ArrayLike<number>;
  globalIrradianceWPerM2: ArrayLike<number>;
  heatingDegreeDaysAt65: ArrayLike<number>;
  coolingDegreeDaysAt65: ArrayLike<number>;
}

interface PlainLeak {
  side: "supply" | "return";
  isInAttic: boolean;
  priorCfm25: number;
  doubtRatio: number;
  pressureFraction: number;
  remainingShare: number;
}

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const CP = 0.24;
const INDOOR_HEATING_F = 69;
const INDOOR_COOLING_F = 76;
const FAN_FLOW_CFM = 1120;
const SUPPLY_PA = 62;
const RETURN_PA = 71;
const FAN_SLOPE_CFM_PER_PA = 2;
const BLOWER_W = 520;
const FURNACE_BTU_PER_H = 64_000;
const FURNACE_EFFICIENCY = 0.8;
const COOLING_BTU_PER_H = 36_000;
const SEER = 11;
const SENSIBLE_HEAT_RATIO = 0.75;
const KNOWN_HEATING_THERMS = 780;
const KNOWN_COOLING_KWH = 1150;
const FLOOR_FT2 = 1640;
const ATTIC_REGAIN = 0.1;

/** p = 101325 (1 − 2.25577e-5 z)^5.25588, z = 980 ft; ρ = p/(287.055 T) at 70 °F. */
const PRESSURE_PA = 101325 * (1 - 2.25577e-5 * 980 * 0.3048) ** 5.25588;
const DENSITY_LB_PER_FT3 = ((PRESSURE_PA / (287.055 * (((70 - 32) * 5) / 9 + 273.15))) * 0.3048 ** 3) / 0.45359237;
/** 76 °F at half saturation, by the saturation pressure over water (Hyland and Wexler). */
const KELVIN_INDOORS = ((INDOOR_COOLING_F - 32) * 5) / 9 + 273.15;
const VAPOR_PA =
  0.5 *
  Math.exp(
    -5.8002206e3 / KELVIN_INDOORS +
      1.3914993 -
      4.8640239e-2 * KELVIN_INDOORS +
      4.1764768e-5 * KELVIN_INDOORS ** 2 -
      1.4452093e-8 * KELVIN_INDOORS ** 3 +
      6.5459673 * Math.log(KELVIN_INDOORS),
  );
const INDOOR_HUMIDITY_RATIO = (0.621945 * VAPOR_PA) / (PRESSURE_PA - VAPOR_PA);
/** Of the moisture of outdoor air that leaks bring, what the coil takes out; the rest is taken as dry as the rooms. */
const COIL_MOISTURE_SHARE = 0.65;
const countedHumidity = (w: number) => COIL_MOISTURE_SHARE * w + (1 - COIL_MOISTURE_SHARE) * INDOOR_HUMIDITY_RATIO;
const enthalpy = (f: number, w: number) => 0.24 * f + w * (1061 + 0.444 * f);

/** Gap area in in² times 1.06 √25; doubts: tape .35, eye .6. Shares left are those of the repairs in the test's job. */
const PLAIN_LEAKS: readonly PlainLeak[] = [
  {
    side: "supply",
    isInAttic: true,
    priorCfm25: 30 * 0.5 * 5.3,
    doubtRatio: 0.35,
    pressureFraction: 1,
    remainingShare: 0.12,
  },
  {
    side: "supply",
    isInAttic: true,
    priorCfm25: 22 * 0.75 * 5.3,
    doubtRatio: 0.6,
    pressureFraction: 0.5,
    remainingShare: 0.07,
  },
  {
    side: "supply",
    isInAttic: true,
    priorCfm25: 32 * 0.25 * 5.3,
    doubtRatio: 0.6,
    pressureFraction: 0.1,
    remainingShare: 0.12,
  },
  {
    side: "return",
    isInAttic: false,
    priorCfm25: 16 * 0.6 * 5.3,
    doubtRatio: 0.35,
    pressureFraction: 1,
    remainingShare: 0.1,
  },
  {
    side: "return",
    isInAttic: true,
    priorCfm25: 96 * 0.25 * 5.3,
    doubtRatio: 0.6,
    pressureFraction: 0.7,
    remainingShare: 0.15,
  },
];
/** Supply outside, supply inside, return outside, return inside; nobody has found them, half the plenum pressure. */
const QUARTERS = [
  { side: "supply", isInAttic: true },
  { side: "supply", isInAttic: false },
  { side: "return", isInAttic: true },
  { side: "return", isInAttic: false },
] as const;

/** The total test: a line through ln Q over ln P, baseline 0.25 Pa off; t(0.975, 4) = 2.776445. */
function readTotal(): { cfm25: number; uncertainty: number } {
  const points = [
    [50.2, 437],
    [40.4, 386],
    [30.3, 321],
    [25.4, 290],
    [20.2, 251],
    [15.3, 213],
  ] as const;
  const x = points.map(([pa]) => Math.log(pa - 0.25));
  const y = points.map(([, cfm]) => Math.log(cfm));
  const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
  const [mx, my] = [mean(x), mean(y)];
  let sxx = 0;
  let sxy = 0;
  for (let i = 0; i < x.length; i++) {
    sxx += (x[i]! - mx) ** 2;
    sxy += (x[i]! - mx) * (y[i]! - my);
  }
  const n = sxy / sxx;
  let misses = 0;
  for (let i = 0; i < x.length; i++) misses += (y[i]! - my - n * (x[i]! - mx)) ** 2;
  const cfm25 = Math.exp(my + n * (Math.log(25) - mx));
  const half = 2.7764451051977987 * Math.sqrt((misses / 4) * (1 / 6 + (Math.log(25) - mx) ** 2 / sxx));
  const own = Math.hypot((Math.exp(half) - Math.exp(-half)) / 2 / 1.96, (n * 0.25) / Math.sqrt(3) / 25, 0.02);
  return { cfm25, uncertainty: cfm25 * Math.hypot(own, 0.05 / Math.sqrt(3)) };
}

/** The test to outside: one step at 25.1 + 0.1 Pa, carried to 25 Pa with exponent 0.6. */
function readToOutside(): { cfm25: number; uncertainty: number } {
  const pa = 25.1 + 0.1;
  const cfm25 = 236 * (25 / pa) ** 0.6;
  const own = Math.hypot(0.01, (0.6 * Math.max(0.01 * pa, 0.25)) / Math.sqrt(3) / pa, 0.025);
  return { cfm25, uncertainty: cfm25 * Math.hypot(own, 0.05 / Math.sqrt(3), 0.05 * Math.abs(Math.log(25 / pa))) };
}

/** METHODS leakage-reconciliation by going round the unknowns, each set to its own best, until nothing moves. */
function reconcile(): number[] {
  const total = readTotal();
  const outside = readToOutside();
  const quarterSpread = Math.sqrt(0.25) * total.cfm25;
  const unknowns = [
    ...PLAIN_LEAKS.map((leak) => ({
      prior: leak.priorCfm25,
      spread: Math.max(leak.doubtRatio * leak.priorCfm25, 0.005 * total.cfm25),
      share: leak.isInAttic ? 1 : 0,
    })),
    ...QUARTERS.map(({ isInAttic }) => ({ prior: 0, spread: quarterSpread, share: isInAttic ? 1 : 0 })),
  ];
  const x = unknowns.map(({ prior }) => prior);
  for (let round = 0; round < 200_000; round++) {
    let moved = 0;
    for (let i = 0; i < x.length; i++) {
      const { prior, spread, share } = unknowns[i]!;
      let others = 0;
      let othersOutside = 0;
      for (let j = 0; j < x.length; j++) {
        if (j === i) continue;
        others += x[j]!;
        othersOutside += unknowns[j]!.share * x[j]!;
      }
      const pull =
        prior / spread ** 2 +
        (total.cfm25 - others) / total.uncertainty ** 2 +
        (share * (outside.cfm25 - othersOutside)) / outside.uncertainty ** 2;
      const weight = 1 / spread ** 2 + 1 / total.uncertainty ** 2 + share ** 2 / outside.uncertainty ** 2;
      const best = Math.max(0, pull / weight);
      moved = Math.max(moved, Math.abs(best - x[i]!));
      x[i] = best;
    }
    if (moved < 1e-13) return x;
  }
  throw new Error("Going round did not settle");
}

interface PlainState {
  cfm25: number[];
  fanFlowCfm: number;
  supplyAllCfm: number;
  returnAllCfm: number;
  /** Between ducts and attic. */
  supplyAtticCfm: number;
  returnAtticCfm: number;
}

/** Q_op = CFM25 (P/25)^0.6 at each leak's own pressure. */
function running(cfm25: number[]): PlainState {
  const state = {
    cfm25,
    fanFlowCfm: FAN_FLOW_CFM,
    supplyAllCfm: 0,
    returnAllCfm: 0,
    supplyAtticCfm: 0,
    returnAtticCfm: 0,
  };
  for (let i = 0; i < cfm25.length; i++) {
    const leak =
      i < PLAIN_LEAKS.length ? PLAIN_LEAKS[i]! : { ...QUARTERS[i - PLAIN_LEAKS.length]!, pressureFraction: 0.5 };
    const isSupply = leak.side === "supply";
    const flow = cfm25[i]! * (((isSupply ? SUPPLY_PA : RETURN_PA) * leak.pressureFraction) / 25) ** 0.6;
    if (isSupply) state.supplyAllCfm += flow;
    else state.returnAllCfm += flow;
    if (leak.isInAttic && isSupply) state.supplyAtticCfm += flow;
    if (leak.isInAttic && !isSupply) state.returnAtticCfm += flow;
  }
  return state;
}

/** Pressure of a side over what it was, at a flow: C√P + L(P/P0)^.6 = Q, by halving. */
function pressureRatio(flow: number, register: number, leak: number): number {
  let low = 0;
  let high = 100;
  for (let i = 0; i < 200; i++) {
    const ratio = (low + high) / 2;
    if (register * Math.sqrt(ratio) + leak * ratio ** 0.6 < flow) low = ratio;
    else high = ratio;
  }
  return (low + high) / 2;
}

/** METHODS airflow-after-sealing by halving the fan flow; the leaks left then pass what the new pressures let through. */
function sealed(before: PlainState, left: PlainState): PlainState {
  const supplyRegister = FAN_FLOW_CFM - before.supplyAllCfm;
  const returnRegister = FAN_FLOW_CFM - before.returnAllCfm;
  let low = 0;
  let high = 2 * FAN_FLOW_CFM;
  let supply = 1;
  let back = 1;
  for (let i = 0; i < 200; i++) {
    const flow = (low + high) / 2;
    supply = pressureRatio(flow, supplyRegister, left.supplyAllCfm);
    back = pressureRatio(flow, returnRegister, left.returnAllCfm);
    const rise = SUPPLY_PA * (supply - 1) + RETURN_PA * (back - 1);
    if (flow < FAN_FLOW_CFM - FAN_SLOPE_CFM_PER_PA * rise) low = flow;
    else high = flow;
  }
  return {
    cfm25: left.cfm25,
    fanFlowCfm: (low + high) / 2,
    supplyAllCfm: left.supplyAllCfm * supply ** 0.6,
    returnAllCfm: left.returnAllCfm * back ** 0.6,
    supplyAtticCfm: left.supplyAtticCfm * supply ** 0.6,
    returnAtticCfm: left.returnAtticCfm * back ** 0.6,
  };
}

/** Supply runs in the attic, length in feet and diameter in inches; sheet metal first, the rest flexible. R 4.2 + 0.7. */
const RUNS = [
  [38, 16],
  [22, 6],
  [26, 6],
  [18, 5],
  [24, 8],
  [16, 7],
  [14, 5],
] as const;
const RUN_AREAS = RUNS.map(([length, diameter]) => (Math.PI * diameter * length) / 12);
const SUPPLY_AREA = RUN_AREAS.reduce((a, b) => a + b, 0);
const RETURN_AREA = 46;
/** 1 − loss · share outside · (1 − regain), the loss by the surface of each material outside. */
const CYCLING =
  1 -
  ((0.05 * RUN_AREAS[0]! + 0.02 * (SUPPLY_AREA - RUN_AREAS[0]!)) / SUPPLY_AREA) *
    (SUPPLY_AREA / (SUPPLY_AREA + RETURN_AREA)) *
    (1 - ATTIC_REGAIN);

interface Moment {
  outdoorF: number;
  sun: number;
  isNight: boolean;
  humidityRatio: number;
}

function atticF({ outdoorF, sun, isNight }: Moment, indoorF: number): number {
  const solAirF = outdoorF + (0.85 * sun) / 3 - (isNight ? 0.5 * 7 : 0);
  const air = 60 * 0.075 * CP * 0.15;
  return (indoorF / 30 + 0.5 * solAirF + air * outdoorF) / (1 / 30 + 0.5 + air);
}

/** Outdoor air drawn in only because the blower runs (unbalanced-infiltration), leakage to outside on both sides. */
function extraInfiltration({ supplyAtticCfm, returnAtticCfm }: PlainState): number {
  const natural = 2150 / 17;
  const unbalanced = Math.abs(supplyAtticCfm - returnAtticCfm);
  const on =
    supplyAtticCfm >= returnAtticCfm
      ? Math.max(unbalanced, natural + unbalanced / 2)
      : Math.max(0, natural - unbalanced / 2);
  return on - natural;
}

/** delivery-effectiveness-heating, thermal-regain, load-factor, distribution-efficiency; return ducts in the rooms: B_r 1. */
function heatingEfficiency(state: PlainState, moment: Moment): number {
  const m = 60 * state.fanFlowCfm * DENSITY_LB_PER_FT3 * CP;
  const as = 1 - state.supplyAtticCfm / state.fanFlowCfm;
  const ar = 1 - state.returnAtticCfm / state.fanFlowCfm;
  const bs = Math.exp(-SUPPLY_AREA / 4.9 / m);
  const dt = INDOOR_HEATING_F - atticF(moment, INDOOR_HEATING_F);
  const rise = FURNACE_BTU_PER_H / m;
  const de = as * bs - (as * bs * (1 - ar) * dt) / rise - (as * (1 - bs) * dt) / rise;
  // A supply leak's warmth counts from the attic's temperature; outdoor air makes up for what the return draws from it.
  const traded = (1 - as) * dt - (1 - ar) * (INDOOR_HEATING_F - dt - moment.outdoorF);
  const withRegain =
    de + ATTIC_REGAIN * (1 - de) - (ATTIC_REGAIN * (1 - ar) * dt) / rise + (ATTIC_REGAIN * traded) / rise;
  const air = 60 * DENSITY_LB_PER_FT3 * CP * extraInfiltration(state) * (INDOOR_HEATING_F - moment.outdoorF);
  return withRegain * (1 - air / (withRegain * FURNACE_BTU_PER_H)) * CYCLING;
}

/** Output and input over their rating by the airflow, 400 cfm a ton (nrel-56354). */
function airflowFactors(fanFlowCfm: number): { capacity: number; efficiency: number } {
  const x = fanFlowCfm / ((400 * COOLING_BTU_PER_H) / 12_000);
  return {
    capacity: 0.718605468 + 0.410099989 * x - 0.128705457 * x * x,
    efficiency: 1 / (1.32299905 - 0.477711207 * x + 0.154712157 * x * x),
  };
}

/** Straight lines through 82 and 95 °F: capacity over its rating at 95, and input over it at an efficiency of 1 at 82. */
const CAPACITY_82 = 1.0686;
const EFFICIENCY_95 = 0.804;
const capacityAt = (outdoorF: number) => 1 + ((CAPACITY_82 - 1) * (95 - outdoorF)) / 13;
const inputAt = (outdoorF: number) => CAPACITY_82 + ((1 / EFFICIENCY_95 - CAPACITY_82) * (outdoorF - 82)) / 13;

/** delivery-effectiveness-cooling, thermal-regain-cooling, load-factor-cooling, distribution-efficiency. */
function coolingEfficiency(state: PlainState, moment: Moment): number {
  const lb = 60 * state.fanFlowCfm * DENSITY_LB_PER_FT3;
  const capacity = COOLING_BTU_PER_H * airflowFactors(state.fanFlowCfm).capacity * capacityAt(moment.outdoorF);
  const as = 1 - state.supplyAtticCfm / state.fanFlowCfm;
  const ar = 1 - state.returnAtticCfm / state.fanFlowCfm;
  const bs = Math.exp(-SUPPLY_AREA / 4.9 / (lb * CP));
  const zoneF = atticF(moment, INDOOR_COOLING_F);
  const indoorEnthalpy = enthalpy(INDOOR_COOLING_F, INDOOR_HUMIDITY_RATIO);
  const returnGain = lb * (1 - ar) * (enthalpy(zoneF, countedHumidity(moment.humidityRatio)) - indoorEnthalpy);
  const enteringF = ar * INDOOR_COOLING_F + (1 - ar) * zoneF;
  const plenumF = enteringF - (SENSIBLE_HEAT_RATIO * capacity) / (lb * CP);
  const de = (as * (capacity - returnGain - lb * CP * (zoneF - plenumF) * (1 - bs))) / capacity;
  const traded = (1 - as) * (zoneF - INDOOR_COOLING_F) + (1 - ar) * (zoneF - moment.outdoorF);
  const withRegain = de + ATTIC_REGAIN * (1 - de - returnGain / capacity + (lb * CP * traded) / capacity);
  const outdoorEnthalpy = enthalpy(moment.outdoorF, countedHumidity(moment.humidityRatio));
  const air = 60 * DENSITY_LB_PER_FT3 * extraInfiltration(state) * (outdoorEnthalpy - indoorEnthalpy);
  return withRegain * (1 - air / (withRegain * capacity)) * CYCLING;
}

/** Daily temperatures: each month about its own mid-range mean, drawn together by one factor that meets the tabulated sum. */
function dailyTemperatures(weather: PlainWeather): number[] {
  const count = weather.hours.length;
  const hours = new Array<number>(12).fill(0);
  const sums = new Array<number>(12).fill(0);
  for (let b = 0; b < count; b++) {
    hours[weather.month[b]! - 1]! += weather.hours[b]!;
    sums[weather.month[b]! - 1]! += weather.hours[b]! * weather.temperatureF[b]!;
  }
  const middle = DAYS.map(
    (days, m) => 65 - (weather.heatingDegreeDaysAt65[m]! - weather.coolingDegreeDaysAt65[m]!) / days,
  );
  let tabulated = 0;
  for (let m = 0; m < 12; m++) tabulated += weather.heatingDegreeDaysAt65[m]! + weather.coolingDegreeDaysAt65[m]!;
  const dayF = (b: number, factor: number) => {
    const m = weather.month[b]! - 1;
    return middle[m]! + factor * (weather.temperatureF[b]! - sums[m]! / hours[m]!);
  };
  let low = 0;
  let high = 1;
  for (let i = 0; i < 100; i++) {
    const factor = (low + high) / 2;
    let sum = 0;
    for (let b = 0; b < count; b++) sum += (Math.abs(dayF(b, factor) - 65) * weather.hours[b]!) / 24;
    if (sum > tabulated) high = factor;
    else low = factor;
  }
  return Array.from({ length: count }, (_, b) => dayF(b, (low + high) / 2));
}

/** Heat loss of a plain house of its age (U .10, .05, .09, .70) and what people, lights and sun bring. */
function balances(): { heatingF: number; coolingF: number } {
  const perimeter = 2 * 2.5 * Math.sqrt(FLOOR_FT2 / 1.5);
  const window = 0.15 * FLOOR_FT2;
  const ua =
    (perimeter * 8.5 - window) * 0.1 +
    FLOOR_FT2 * 0.05 +
    FLOOR_FT2 * 0.09 +
    window * 0.7 +
    (60 * DENSITY_LB_PER_FT3 * CP * 2150) / 17;
  const gains = (17_900 + 23.8 * FLOOR_FT2 + 4104 * 3) / 24;
  const within = (low: number, high: number, value: number) => Math.min(high, Math.max(low, value));
  return {
    heatingF: within(48, 66, INDOOR_HEATING_F - (gains + 1.5 * FLOOR_FT2) / ua),
    coolingF: within(62, 74, INDOOR_COOLING_F - (gains + 3 * FLOOR_FT2) / ua),
  };
}

/** Share of the year's need in each bin: months by daily degree days, bins within a month by degree hours. */
function loadShares(weather: PlainWeather, mode: "heating" | "cooling", balanceF: number): number[] {
  const sign = mode === "heating" ? 1 : -1;
  const daily = dailyTemperatures(weather);
  const degreeDays = new Array<number>(12).fill(0);
  const degreeHours = new Array<number>(12).fill(0);
  const count = weather.hours.length;
  for (let b = 0; b < count; b++) {
    const m = weather.month[b]! - 1;
    degreeDays[m]! += (Math.max(0, sign * (balanceF - daily[b]!)) * weather.hours[b]!) / 24;
    degreeHours[m]! += Math.max(0, sign * (balanceF - weather.temperatureF[b]!)) * weather.hours[b]!;
  }
  const shares = Array.from({ length: count }, (_, b) => {
    const m = weather.month[b]! - 1;
    const excess = Math.max(0, sign * (balanceF - weather.temperatureF[b]!)) * weather.hours[b]!;
    return excess > 0 && degreeDays[m]! > 0 ? (degreeDays[m]! * excess) / degreeHours[m]! : 0;
  });
  const whole = shares.reduce((a, b) => a + b, 0);
  return shares.map((share) => share / whole);
}

/** Σ share · weight(outdoor)/η over the bins. */
function weighted(
  weather: PlainWeather,
  shares: number[],
  efficiency: (moment: Moment) => number,
  weight: (outdoorF: number) => number = () => 1,
): number {
  let sum = 0;
  for (let b = 0; b < shares.length; b++) {
    if (shares[b] === 0) continue;
    const watts = weather.globalIrradianceWPerM2[b]!;
    const moment = {
      outdoorF: weather.temperatureF[b]!,
      sun: (watts * 3600 * 0.3048 ** 2) / 1055.05585262,
      isNight: watts < 5,
      humidityRatio: weather.humidityRatio[b]!,
    };
    sum += (shares[b]! * weight(moment.outdoorF)) / efficiency(moment);
  }
  return sum;
}

/** The whole house, before and after the repairs. */
export function plainEstimate(weather: PlainWeather) {
  const cfm25 = reconcile();
  const before = running(cfm25);
  const left = cfm25.map((each, i) => each * (PLAIN_LEAKS[i]?.remainingShare ?? 1));
  const after = sealed(before, running(left));
  const { heatingF, coolingF } = balances();
  const heatingShares = loadShares(weather, "heating", heatingF);
  const coolingShares = loadShares(weather, "cooling", coolingF);
  const heating = (state: PlainState) =>
    1 / weighted(weather, heatingShares, (moment) => heatingEfficiency(state, moment));
  const coolingSum = (state: PlainState, weight?: (outdoorF: number) => number) =>
    weighted(weather, coolingShares, (moment) => coolingEfficiency(state, moment), weight);
  const cooling = (state: PlainState) => 1 / coolingSum(state);
  const efficiencies = {
    heatingBefore: heating(before),
    heatingAfter: heating(after),
    coolingBefore: cooling(before),
    coolingAfter: cooling(after),
  };
  // The need is the same before and after: what was known to be used, times what arrived of it.
  const heatBtu = KNOWN_HEATING_THERMS * 1e5 * FURNACE_EFFICIENCY * efficiencies.heatingBefore;
  /** Of a Btu of cold in the rooms: hours at full output, and Wh of the compressor. */
  const hoursPerCold = (state: PlainState) =>
    coolingSum(state, (f) => 1 / (COOLING_BTU_PER_H * airflowFactors(state.fanFlowCfm).capacity * capacityAt(f)));
  const wattHoursPerCold = (state: PlainState) =>
    coolingSum(state, (f) => inputAt(f) / capacityAt(f)) / (SEER * airflowFactors(state.fanFlowCfm).efficiency);
  const coolBtu = (KNOWN_COOLING_KWH * 1000) / wattHoursPerCold(before);
  const use = (state: PlainState, heatingEta: number) => {
    const heatingHours = heatBtu / heatingEta / FURNACE_BTU_PER_H;
    const coolingHours = coolBtu * hoursPerCold(state);
    const blowerKW = (BLOWER_W * state.fanFlowCfm) / FAN_FLOW_CFM / 1000;
    const compressorKWh = (coolBtu * wattHoursPerCold(state)) / 1000;
    return {
      therms: heatBtu / heatingEta / FURNACE_EFFICIENCY / 1e5,
      kWh: compressorKWh + blowerKW * (heatingHours + coolingHours),
    };
  };
  const useBefore = use(before, efficiencies.heatingBefore);
  const useAfter = use(after, efficiencies.heatingAfter);
  return {
    siteCfm25: cfm25.slice(0, PLAIN_LEAKS.length),
    totalCfm25: cfm25.reduce((a, b) => a + b, 0),
    toOutsideCfm25: cfm25.reduce(
      (sum, each, i) => sum + ((PLAIN_LEAKS[i] ?? QUARTERS[i - PLAIN_LEAKS.length]!).isInAttic ? each : 0),
      0,
    ),
    leftCfm25: left.reduce((a, b) => a + b, 0),
    fanFlowAfterCfm: after.fanFlowCfm,
    ...efficiencies,
    useBefore,
    useAfter,
    savedUsd: (useBefore.therms - useAfter.therms) * 1.12 + (useBefore.kWh - useAfter.kWh) * 0.168,
  };
}
