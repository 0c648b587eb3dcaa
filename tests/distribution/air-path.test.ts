import { describe, expect, it } from "vitest";
import { deliveredWithRegain } from "#lib/distribution/air-path.ts";
import { addToAccount, createCapacityAccount } from "#lib/distribution/capacity-account.ts";
import { deliveryEffectivenessCooling } from "#lib/distribution/delivery-effectiveness-cooling.ts";
import { deliveryEffectivenessHeating } from "#lib/distribution/delivery-effectiveness-heating.ts";
import { distributionEfficiency } from "#lib/distribution/distribution-efficiency.ts";
import { loadFactor } from "#lib/distribution/load-factor.ts";
import { loadFactorCooling } from "#lib/distribution/load-factor-cooling.ts";
import { thermalRegain } from "#lib/distribution/thermal-regain.ts";
import { thermalRegainCooling } from "#lib/distribution/thermal-regain-cooling.ts";
import { expectClose } from "#tests/expect-close.ts";
import { CONFIGURATIONS, follow, surroundings } from "./configurations.ts";
import { type MarchedSystem, marchBalance } from "./marching-balance.ts";

const marched = { relativeTolerance: 1e-7, reason: "midpoint rule over 400 pieces of duct" } as const;
const identical = { relativeTolerance: 1e-12, reason: "the same equation in another form" } as const;

describe.each(Object.entries(CONFIGURATIONS))("%s", (_, system) => {
  it("agrees with the marching energy balance [derived]", () => {
    const path = follow(system);
    const march = marchBalance(system);
    const scale = system.capacityBtuPerH;
    expectClose({ actual: march.bookedBtuPerH, expected: scale, ...marched });
    for (const [actual, expected] of [
      [path.deliveredBtuPerH, march.deliveredBtuPerH],
      [path.infiltrationBtuPerH, march.infiltrationBtuPerH],
      [deliveredWithRegain(path), march.deliveredBtuPerH + march.regainedBtuPerH],
      [path.usefulBtuPerH, march.deliveredBtuPerH + march.regainedBtuPerH - march.infiltrationBtuPerH],
    ] as const) {
      expectClose({ actual, expected, scale, ...marched });
    }
    for (const key of ["returnDuctEndF", "equipmentEnteringF", "supplyPlenumF", "registerF"] as const) {
      expectClose({ actual: path[key], expected: march[key], scale: 100, ...marched });
    }
  });

  it("counts every Btu of the capacity once", () => {
    const path = follow(system);
    const booked =
      path.deliveredBtuPerH +
      path.supplyConductionBtuPerH +
      path.supplyLeakBtuPerH +
      path.returnConductionBtuPerH +
      path.returnLeakBtuPerH;
    expectClose({ actual: booked, expected: system.capacityBtuPerH, ...identical });
    const account = createCapacityAccount();
    const cyclingFactor = 0.96;
    const cycled = follow(system, { cyclingFactor });
    addToAccount({
      path: cycled,
      capacityBtuPerH: system.capacityBtuPerH,
      cyclingFactor,
      equipmentFactor: 0.97,
      weight: 1,
      account,
    });
    expectClose({ actual: Object.values(account).reduce((sum, each) => sum + each, 0), expected: 1, ...identical });
    expectClose({
      actual: account.roomsShare + account.regainedShare,
      expected: (0.97 * cycled.usefulBtuPerH) / system.capacityBtuPerH,
      scale: 1,
      ...identical,
    });
  });
});

/** A system whose ducts of a side lie in one place, as the closed forms of the catalogue need it. */
const onePlaceASide = Object.entries(CONFIGURATIONS).filter(([, { places }]) => places.length <= 2);

describe.each(onePlaceASide)("%s", (_, system) => {
  it("equals the closed forms of the catalogue", () => {
    const path = follow(system);
    const expected = closedForm(system);
    const scale = system.capacityBtuPerH;
    expectClose({ actual: path.deliveredBtuPerH, expected: scale * expected.delivered, scale, ...identical });
    expectClose({ actual: deliveredWithRegain(path), expected: scale * expected.withRegain, scale, ...identical });
    if (expected.efficiency === null) return;
    expectClose({ actual: path.usefulBtuPerH, expected: scale * expected.efficiency, scale, ...identical });
  });
});

function closedForm(system: MarchedSystem): { delivered: number; withRegain: number; efficiency: number | null } {
  const { places, capacityBtuPerH } = system;
  const supplyPlace = places[0]!;
  const returnPlace = places[places.length - 1]!;
  const around = surroundings(system);
  const ducts = {
    fanFlowCfm: system.fanFlowCfm,
    airDensityLbPerFt3: system.densityLbPerFt3,
    capacityBtuPerH,
    supplyLeakageCfm: supplyPlace.supplyLeakageCfm,
    returnLeakageCfm: returnPlace.returnLeakageCfm,
    supplyAreaFt2: supplyPlace.supplyConductance * 4.9,
    returnAreaFt2: returnPlace.returnConductance * 4.9,
    supplyRValue: 4.9,
    returnRValue: 4.9,
    indoorTemperatureF: system.indoorTemperatureF,
    supplyZoneTemperatureF: supplyPlace.temperatureF,
    returnZoneTemperatureF: returnPlace.temperatureF,
  };
  const regains = { supplyRegain: supplyPlace.regain, returnRegain: returnPlace.regain };
  const infiltration = {
    capacityBtuPerH,
    airDensityLbPerFt3: system.densityLbPerFt3,
    infiltrationOnCfm: 80 + system.extraInfiltrationCfm,
    infiltrationOffCfm: 80,
  };
  if (system.mode === "heating") {
    const delivery = deliveryEffectivenessHeating(ducts);
    const { deliveryEffectiveness } = thermalRegain({ ...delivery, ...regains });
    const load = () =>
      loadFactor({
        ...infiltration,
        deliveryEffectiveness,
        indoorTemperatureF: system.indoorTemperatureF,
        outdoorTemperatureF: system.outdoorTemperatureF,
      });
    return closed(delivery.deliveryEffectiveness, deliveryEffectiveness, load);
  }
  const delivery = deliveryEffectivenessCooling({
    ...ducts,
    sensibleHeatRatio: system.sensibleHeatRatio,
    indoorEnthalpyBtuPerLb: around.indoorEnthalpyBtuPerLb,
    returnZoneEnthalpyBtuPerLb: around.zoneEnthalpyBtuPerLb[places.length - 1]!,
  });
  const { deliveryEffectiveness } = thermalRegainCooling({ ...delivery, ...regains });
  const load = () =>
    loadFactorCooling({
      ...infiltration,
      deliveryEffectiveness,
      indoorEnthalpyBtuPerLb: around.indoorEnthalpyBtuPerLb,
      outdoorEnthalpyBtuPerLb: around.outdoorEnthalpyBtuPerLb,
    });
  return closed(delivery.deliveryEffectiveness, deliveryEffectiveness, load);
}

/** Where nothing arrives there is no load factor. */
function closed(delivered: number, withRegain: number, load: () => { loadFactor: number }) {
  if (!(withRegain > 0)) return { delivered, withRegain, efficiency: null };
  const { distributionEfficiency: efficiency } = distributionEfficiency({
    deliveryEffectiveness: withRegain,
    ...load(),
    cyclingLoss: 0,
  });
  return { delivered, withRegain, efficiency };
}

describe("what the closed forms leave out", () => {
  it("moves the delivery by less than 2 % of the capacity when leaks are spread along the ducts, not at their ends", () => {
    for (const [name, system] of Object.entries(CONFIGURATIONS)) {
      if (name.includes("bitter day")) continue;
      const spread = marchBalance({ ...system, leaks: "along" });
      const difference = Math.abs(spread.deliveredBtuPerH - follow(system).deliveredBtuPerH) / system.capacityBtuPerH;
      expect(difference, name).toBeLessThan(0.02);
    }
  });

  it("books every Btu there, too", () => {
    for (const system of Object.values(CONFIGURATIONS)) {
      const spread = marchBalance({ ...system, leaks: "along" });
      expectClose({ actual: spread.bookedBtuPerH, expected: system.capacityBtuPerH, ...marched });
    }
  });
});
