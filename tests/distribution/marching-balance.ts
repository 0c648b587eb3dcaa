/**
 * An energy and moisture balance of a duct system that marches through many short pieces of duct, written without the
 * closed forms: no exponential, no weighted zone temperature, no regain formula. Heat that a piece gives to a place is
 * booked to that place; what comes back is counted from those books.
 */
export interface MarchedPlace {
  temperatureF: number;
  humidityRatio: number;
  regain: number;
  supplyConductance: number;
  returnConductance: number;
  supplyLeakageCfm: number;
  returnLeakageCfm: number;
}

export interface MarchedSystem {
  mode: "heating" | "cooling";
  fanFlowCfm: number;
  densityLbPerFt3: number;
  indoorTemperatureF: number;
  indoorHumidityRatio: number;
  outdoorTemperatureF: number;
  outdoorHumidityRatio: number;
  extraInfiltrationCfm: number;
  places: readonly MarchedPlace[];
  capacityBtuPerH: number;
  /** Cooling only: part of the capacity that lowers the temperature. */
  sensibleHeatRatio: number;
  /** Leaks come at the end of a side (as the closed forms take them) or evenly along it. */
  leaks: "at-the-end" | "along";
  piecesCount: number;
}

export interface MarchedBalance {
  deliveredBtuPerH: number;
  regainedBtuPerH: number;
  infiltrationBtuPerH: number;
  returnDuctEndF: number;
  equipmentEnteringF: number;
  supplyPlenumF: number;
  registerF: number;
  /** Delivered and every loss; the capacity, if nothing was forgotten. */
  bookedBtuPerH: number;
}

const DRY_AIR_HEAT = 0.24;
const HEAT_OF_VAPOR = 1061;

const enthalpy = (temperatureF: number, humidityRatio: number) =>
  DRY_AIR_HEAT * temperatureF + HEAT_OF_VAPOR * humidityRatio;

/** Enthalpy of a place's air as this balance counts it, to hand to the closed forms. */
export const marchedEnthalpy = enthalpy;

export function marchBalance(system: MarchedSystem): MarchedBalance {
  const { places, piecesCount, indoorTemperatureF, indoorHumidityRatio, leaks } = system;
  // In heating the thermostat answers to temperature alone: dry zone air costs no heat.
  const vapor = system.mode === "cooling" ? 1 : 0;
  const heatOf = (temperature: number, humidityRatio: number) => enthalpy(temperature, vapor * humidityRatio);
  const massRate = 60 * system.fanFlowCfm * system.densityLbPerFt3;
  const share = (cfm: number) => cfm / system.fanFlowCfm;
  const sum = (read: (place: MarchedPlace) => number) => places.reduce((total, place) => total + read(place), 0);
  const toPlaceBySupply = places.map(() => 0);
  const toPlaceByReturn = places.map(() => 0);

  /** One piece: gives heat to each place in turn of its conductance, by the midpoint rule. Returns the new temperature. */
  const conduct = (
    temperatureF: number,
    flowShare: number,
    conductance: (place: MarchedPlace) => number,
    booked: number[],
  ) => {
    const rate = (t: number) => sum((place) => (conductance(place) / piecesCount) * (t - place.temperatureF));
    const heatRate = massRate * DRY_AIR_HEAT * flowShare;
    const halfway = temperatureF - rate(temperatureF) / heatRate / 2;
    places.forEach((place, p) => {
      booked[p]! += (conductance(place) / piecesCount) * (halfway - place.temperatureF);
    });
    return temperatureF - rate(halfway) / heatRate;
  };

  // Return: the rooms' share enters at the grille; zone air joins at the end, or a little in every piece.
  const fromRooms = 1 - sum((place) => share(place.returnLeakageCfm));
  let t = indoorTemperatureF;
  let w = indoorHumidityRatio;
  let returnDuctEndF = t;
  let returnLeakHeat = 0;
  const mixIn = (flow: number, place: MarchedPlace, part: number) => {
    const added = part * share(place.returnLeakageCfm);
    t = (flow * t + added * place.temperatureF) / (flow + added);
    w = (flow * w + added * place.humidityRatio) / (flow + added);
    returnLeakHeat +=
      massRate *
      added *
      (heatOf(indoorTemperatureF, indoorHumidityRatio) - heatOf(place.temperatureF, place.humidityRatio));
    return flow + added;
  };
  let flow = fromRooms;
  for (let piece = 0; piece < piecesCount; piece++) {
    // At the end: the wall sees the full flow, as the closed forms take it; the rooms' share of it is what counts.
    t = conduct(t, leaks === "along" ? flow : 1, (place) => place.returnConductance, toPlaceByReturn);
    if (leaks === "along") for (const place of places) flow = mixIn(flow, place, 1 / piecesCount);
  }
  returnDuctEndF = t;
  if (leaks === "at-the-end") for (const place of places) flow = mixIn(flow, place, 1);
  const equipmentEnteringF = t;

  const sign = system.mode === "heating" ? 1 : -1;
  const sensible = system.mode === "heating" ? 1 : system.sensibleHeatRatio;
  t += (sign * sensible * system.capacityBtuPerH) / (massRate * DRY_AIR_HEAT);
  w += (sign * (1 - sensible) * system.capacityBtuPerH) / (massRate * HEAT_OF_VAPOR);
  const supplyPlenumF = t;

  const room = heatOf(indoorTemperatureF, indoorHumidityRatio);
  const leakToPlace = places.map(() => 0);
  flow = 1;
  const leakOut = (part: number) => {
    places.forEach((place, p) => {
      const lost = part * share(place.supplyLeakageCfm);
      leakToPlace[p]! += massRate * lost * (heatOf(t, w) - room);
      flow -= lost;
    });
  };
  for (let piece = 0; piece < piecesCount; piece++) {
    t = conduct(t, flow, (place) => place.supplyConductance, toPlaceBySupply);
    if (leaks === "along") leakOut(1 / piecesCount);
  }
  if (leaks === "at-the-end") leakOut(1);
  const delivered = massRate * flow * (heatOf(t, w) - room);

  // Books: what each place got, and what of it comes back. In cooling the rooms' share of the return's gain counts.
  const total = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);
  const returnPart = system.mode === "heating" || leaks === "along" ? 1 : fromRooms;
  const regained = places.reduce(
    (all, place, p) => all + place.regain * (toPlaceBySupply[p]! + leakToPlace[p]! + returnPart * toPlaceByReturn[p]!),
    0,
  );
  const returnConduction = leaks === "along" ? total(toPlaceByReturn) : fromRooms * total(toPlaceByReturn);
  const infiltration =
    60 *
    system.densityLbPerFt3 *
    system.extraInfiltrationCfm *
    (system.mode === "heating"
      ? DRY_AIR_HEAT * (indoorTemperatureF - system.outdoorTemperatureF)
      : heatOf(system.outdoorTemperatureF, system.outdoorHumidityRatio) - room);
  return {
    deliveredBtuPerH: sign * delivered,
    regainedBtuPerH: sign * regained,
    infiltrationBtuPerH: infiltration,
    returnDuctEndF,
    equipmentEnteringF,
    supplyPlenumF,
    registerF: t,
    bookedBtuPerH: sign * (delivered + total(leakToPlace) + total(toPlaceBySupply) + returnConduction + returnLeakHeat),
  };
}
