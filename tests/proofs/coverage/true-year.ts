import type { StudyHouse } from "./study-house.ts";
import type { TrueAir } from "./true-air.ts";
import { PER_CFM, runAir } from "./true-duct-air.ts";
import { coolingCoil, heatPumpHeat } from "./true-equipment.ts";
import { shellAir } from "./true-shell-air.ts";
import { HOURS, type TrueWeather } from "./true-weather.ts";

/** What a house used in a year, by month. Btu of fuel or electricity; the blower in kWh. */
export interface TrueUse {
  heatingBtu: number[];
  coolingBtu: number[];
  blowerHeatingKWh: number[];
  blowerCoolingKWh: number[];
  /** Largest miss of any hour's account of heat in the rooms, over its need: the proof that none is made or lost. */
  largestMiss: number;
  /** Hours in which the equipment could not keep the rooms at their setting. */
  shortHours: number;
}

/** Pounds of air an hour in one cfm. */
const LB_PER_CFM = 4.5;
const VAPOR_BTU_PER_LB = 1061;
/** What walls and furniture hold with the air, over the air's own moisture. */
const MOISTURE_BUFFER = 12;
const CEILING_FT = 8.3;
const WARM_UP_DAYS = 2;
const STEPS_PER_HOUR = 2;
/** Three starts an hour at most, when the equipment runs half of the time. */
const MOST_STARTS_TIMES_4 = 12;

/** Temperature around the supply ducts outside the rooms, by their surface. */
function aroundF(house: StudyHouse, zoneF: readonly number[], roomF: number): number {
  let area = 0;
  let sum = 0;
  house.zones.forEach(({ supplyAreaFt2 }, p) => {
    area += supplyAreaFt2;
    sum += supplyAreaFt2 * zoneF[p]!;
  });
  return area > 0 ? sum / area : roomF;
}

/** What the ducts themselves hold when the equipment stops, and how they lose it while it stands. */
interface DuctHeat {
  /** Btu above what the places around hold; below 0 in cooling. */
  heldBtu: number;
  /** Hours in which all but a part in e of it is gone. */
  timeConstantH: number;
}

/** What the ducts lose in an hour of cycling, Btu: starts an hour by the thermostat's rule 12 r(1 − r), held heat that fades. */
function cyclingLoss({ heldBtu, timeConstantH }: DuctHeat, runShare: number): number {
  if (!(runShare > 0 && runShare < 1)) return 0;
  const starts = MOST_STARTS_TIMES_4 * runShare * (1 - runShare);
  const standsH = (1 - runShare) / starts;
  return starts * heldBtu * (1 - Math.exp(-standsH / timeConstantH));
}

/** Share of the hour that the equipment runs so that the rooms get what they need; 1 when it falls short. */
function shareOfTime(useful: number, need: number, ducts: DuctHeat): number {
  if (!(useful / need > 1)) return 1;
  let low = 0;
  let high = 1;
  let share = need / useful;
  // Steps by the slope without cycling, every third one a halving: the balance is met to rounding.
  for (let k = 0; k < 150; k++) {
    const miss = (share * useful - cyclingLoss(ducts, share)) / need - 1;
    if (Math.abs(miss) < 1e-12) break;
    if (miss < 0) low = share;
    else high = share;
    const next = share - miss * (need / useful);
    share = k % 3 < 2 && next > low && next < high ? next : (low + high) / 2;
  }
  return share;
}

/**
 * Runs a house through a year of typical days, hour by hour: rooms and zones with their own heat, a thermostat, equipment
 * that cycles, ducts that warm and cool what is around them. Regain, zone temperatures and the season come out of it.
 */
export function trueYear(house: StudyHouse, air: TrueAir, weather: TrueWeather): TrueUse {
  const months = () => new Array<number>(12).fill(0);
  const use: TrueUse = {
    heatingBtu: months(),
    coolingBtu: months(),
    blowerHeatingKWh: months(),
    blowerCoolingKWh: months(),
    largestMiss: 0,
    shortHours: 0,
  };
  const count = house.zones.length;
  const step = 1 / STEPS_PER_HOUR;
  const outsideArea = house.zones.reduce((sum, zone) => sum + zone.supplyAreaFt2, 0);
  const ductHeat = (1 - house.heatBroughtBackShare) * house.ductHeatCapacityPerFt2 * outsideArea;
  const blowerKW = house.blowerW / 1000;
  for (const day of weather.days) {
    let roomF = (house.heatingF + house.coolingF) / 2;
    let roomW = Math.min(0.0105, day.humidityRatio);
    const roomAirLb = house.floorAreaFt2 * CEILING_FT * 0.075;
    const zoneF = house.zones.map((zone) => (zone.kind === "attic" ? day.temperatureF[0]! : roomF - 5));
    const late = weather.meanByMonthF[(day.month + 11) % 12]!;
    const groundF = weather.yearlyMeanF + house.groundSwingShare * (late - weather.yearlyMeanF);
    for (let hour = -WARM_UP_DAYS * HOURS; hour < HOURS; hour += step) {
      const at = Math.floor((hour + WARM_UP_DAYS * HOURS) % HOURS);
      const outdoor = { temperatureF: day.temperatureF[at]!, humidityRatio: day.humidityRatio };
      const sun = day.sunBtuPerHFt2[at]!;
      const shell = shellAir(house, air, roomF - outdoor.temperatureF);
      const off = PER_CFM * shell.off;
      const gains = house.gainsBtuPerH * (at >= 7 && at < 23 ? 1.2 : 0.6) + house.sunApertureFt2 * sun;
      let conductance = house.heatCapacity / step + house.shellBtuPerHF + off;
      let drive = (house.heatCapacity / step) * roomF + (house.shellBtuPerHF + off) * outdoor.temperatureF + gains;
      for (let p = 0; p < count; p++) {
        conductance += house.zones[p]!.toRooms;
        drive += house.zones[p]!.toRooms * zoneF[p]!;
      }
      const freeF = drive / conductance;
      const mode = freeF < house.heatingF ? "heating" : freeF > house.coolingF ? "cooling" : null;
      let runShare = 0;
      let dryingLbPerH = 0;
      let cyclingBtuPerH = 0;
      let toZones: readonly number[] = [];
      let nextF = freeF;
      if (mode) {
        const setF = mode === "heating" ? house.heatingF : house.coolingF;
        let inputBtuPerH = 0;
        let sensible = 0;
        if (mode === "heating") {
          const pump = heatPumpHeat(house, outdoor.temperatureF);
          sensible = house.heating === "heat-pump" ? pump.capacity : house.heatingBtuPerH;
          inputBtuPerH =
            house.heating === "heat-pump" ? pump.inputBtuPerH : house.heatingBtuPerH / house.furnaceEfficiency;
        } else {
          const first = runAir(house, air, outdoor, { temperatureF: setF, humidityRatio: roomW }, zoneF, 0);
          const coil = coolingCoil(house, first, outdoor.temperatureF, air.fanFlowCfm);
          sensible = -coil.sensible;
          inputBtuPerH = coil.inputBtuPerH;
          const latent = (coil.capacity - coil.sensible) / VAPOR_BTU_PER_LB;
          const supplyW = first.enteringW - latent / (LB_PER_CFM * air.fanFlowCfm);
          dryingLbPerH = LB_PER_CFM * first.deliveredCfm * (roomW - supplyW);
        }
        const running = runAir(house, air, outdoor, { temperatureF: setF, humidityRatio: roomW }, zoneF, sensible);
        toZones = running.toZones;
        const extraAir = PER_CFM * (shell.on - shell.off) * (outdoor.temperatureF - setF);
        const useful = running.toRooms + extraAir;
        const need = conductance * setF - drive;
        const ducts = {
          heldBtu: ductHeat * (running.supplyF - aroundF(house, zoneF, roomF)),
          timeConstantH: house.ductHeatCapacityPerFt2 * house.ductRValue,
        };
        runShare = shareOfTime(useful, need, ducts);
        const isShort = runShare >= 1;
        let strips = 0;
        if (isShort && mode === "heating" && house.heating === "heat-pump") {
          const more = runAir(
            house,
            air,
            outdoor,
            { temperatureF: setF, humidityRatio: roomW },
            zoneF,
            sensible + 1000,
          );
          const worth = Math.max(0.05, (more.toRooms - running.toRooms) / 1000);
          strips = Math.max(0, (need - useful) / worth);
          toZones = running.toZones.map((each, p) => each + ((more.toZones[p]! - each) * strips) / 1000);
          nextF = setF;
        } else if (isShort) nextF = (drive + useful) / conductance;
        else {
          nextF = setF;
          cyclingBtuPerH = cyclingLoss(ducts, runShare);
          use.largestMiss = Math.max(
            use.largestMiss,
            Math.abs(runShare * useful - cyclingBtuPerH - need) / Math.max(1, Math.abs(need)),
          );
        }
        if (hour >= 0) {
          const hours = day.weightDays * step;
          if (isShort && strips === 0) use.shortHours += hours;
          const partLoad =
            house.heating !== "heat-pump" && mode === "heating" ? 1 : 1 - house.degradation * (1 - runShare);
          const input = (runShare * inputBtuPerH) / partLoad + strips;
          use[mode === "heating" ? "heatingBtu" : "coolingBtu"][day.month]! += hours * input;
          use[mode === "heating" ? "blowerHeatingKWh" : "blowerCoolingKWh"][day.month]! += hours * runShare * blowerKW;
        }
      }
      for (let p = 0; p < count; p++) {
        const zone = house.zones[p]!;
        const ventilation = PER_CFM * zone.ventilationCfm;
        const heat =
          zone.toRooms * nextF +
          (zone.toOutdoors + ventilation) * outdoor.temperatureF +
          zone.sunAperture * sun +
          zone.toGround * groundF +
          zone.gainBtuPerH +
          runShare * (toZones[p] ?? 0) +
          (outsideArea > 0 ? (cyclingBtuPerH * zone.supplyAreaFt2) / outsideArea : 0) -
          (zone.kind === "attic" && sun === 0 ? zone.toOutdoors * 3 : 0);
        const all = zone.toRooms + zone.toOutdoors + ventilation + zone.toGround + zone.heatCapacity / step;
        zoneF[p] = (heat + (zone.heatCapacity / step) * zoneF[p]!) / all;
      }
      const outdoorAirLb = LB_PER_CFM * (shell.off + runShare * (shell.on - shell.off));
      const wet = house.moistureLbPerH + outdoorAirLb * outdoor.humidityRatio - runShare * dryingLbPerH;
      const held = (MOISTURE_BUFFER * roomAirLb) / step;
      roomW = Math.max(0.002, (held * roomW + wet) / (held + outdoorAirLb));
      roomF = nextF;
    }
  }
  return use;
}
