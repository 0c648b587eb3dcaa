import { SIDES, type Side } from "#lib/job/duct-system.ts";
import type { Cfm, Pascals } from "#lib/units/quantity.ts";
import type { FlowLink } from "./flow-network.ts";
import { houseNetwork } from "./house-network.ts";
import { solveNetwork } from "./solve-network.ts";
import { AS_FOUND, HOUSE, OUTSIDE, RETURN, SUPPLY, type TrueHouse } from "./true-house.ts";

export interface TrueLeakage {
  totalCfm25: Cfm;
  supplyCfm25: Cfm;
  returnCfm25: Cfm;
  toOutsideCfm25: Cfm;
  supplyToOutsideCfm25: Cfm;
  returnToOutsideCfm25: Cfm;
}

/**
 * The leakage that the leaks of a house define: total with 25 Pa across each leak, to outside with house and ducts both
 * 25 Pa above the air outside, so that leaks into the rooms rest. Source: derived.
 */
export function trueLeakage(house: TrueHouse): TrueLeakage {
  const total = { supply: 0, return: 0 };
  for (const leak of house.leaks) total[leak.side] += leak.flowCfm25;
  const outside = leakageToOutsideAt(house, 25);
  return {
    totalCfm25: total.supply + total.return,
    supplyCfm25: total.supply,
    returnCfm25: total.return,
    toOutsideCfm25: outside.supply + outside.return,
    supplyToOutsideCfm25: outside.supply,
    returnToOutsideCfm25: outside.return,
  };
}

/** Flow through each side's leaks when house and ducts stand at the same pressure to outside. */
export function leakageToOutsideAt(house: TrueHouse, pressurePa: Pascals): Record<Side, Cfm> {
  const { links } = houseNetwork(house, AS_FOUND);
  const zoneAndLeakIds = [...house.leaks.map(({ id }) => id), ...zoneLinkIds(house)];
  const branchPressures = Object.fromEntries(house.branches.map(({ id }) => [id, pressurePa]));
  const { flowsCfm } = solveNetwork({
    fixedPressuresPa: {
      [OUTSIDE]: 0,
      [HOUSE]: pressurePa,
      [SUPPLY]: pressurePa,
      [RETURN]: pressurePa,
      ...branchPressures,
    },
    links: links.filter(({ id }) => zoneAndLeakIds.includes(id)),
  });
  return sumBySide(house, flowsCfm);
}

export interface TrueOperation {
  fanFlowCfm: Cfm;
  supplyStaticPa: Pascals;
  returnStaticPa: Pascals;
  /** Through the leaks, wherever it goes. */
  leakageCfm: Record<Side, Cfm>;
  /** What each side's leaks send outdoors, or draw from there, while the house stands at outdoor pressure. */
  toOutsideCfm: Record<Side, Cfm>;
}

/** The air handler running in a calm, house pressures left to themselves. Source: derived. */
export function trueOperation(house: TrueHouse): TrueOperation {
  const { pressuresPa, flowsCfm } = solveNetwork(houseNetwork(house, { ...AS_FOUND, isAirHandlerOn: true }));
  const leakageCfm = sumBySide(house, flowsCfm);
  return {
    fanFlowCfm: flowsCfm["air-handler"]!,
    supplyStaticPa: pressuresPa[SUPPLY]! - pressuresPa[HOUSE]!,
    returnStaticPa: pressuresPa[RETURN]! - pressuresPa[HOUSE]!,
    leakageCfm: { supply: leakageCfm.supply, return: -leakageCfm.return },
    toOutsideCfm: {
      supply: sentOutdoors(house, "supply", flowsCfm),
      return: -sentOutdoors(house, "return", flowsCfm),
    },
  };
}

/** One side's leak flows blown into their zones, the house at outdoor pressure: what leaves the zones outdoors. */
function sentOutdoors(house: TrueHouse, side: Side, flowsCfm: Readonly<Record<string, Cfm>>): Cfm {
  const leaks = house.leaks.filter((leak) => leak.side === side && leak.zoneId !== HOUSE);
  if (leaks.length === 0) return 0;
  const outdoors = leaks.filter((leak) => leak.zoneId === OUTSIDE).reduce((sum, { id }) => sum + flowsCfm[id]!, 0);
  const blown: FlowLink[] = leaks.map(({ id, zoneId }) => ({
    kind: "curve-fan",
    id,
    from: HOUSE,
    to: zoneId,
    flowAtZeroCfm: flowsCfm[id]!,
    slopeCfmPerPa: 0,
  }));
  const zoneLinks = houseNetwork(house, AS_FOUND).links.filter(({ id }) => zoneLinkIds(house).includes(id));
  const solution = solveNetwork({ fixedPressuresPa: { [OUTSIDE]: 0, [HOUSE]: 0 }, links: [...zoneLinks, ...blown] });
  return house.zones.reduce((sum, zone) => sum + solution.flowsCfm[`${zone.id}-to-outside`]!, outdoors);
}

const zoneLinkIds = (house: TrueHouse) => house.zones.flatMap(({ id }) => [`${id}-to-house`, `${id}-to-outside`]);

function sumBySide(house: TrueHouse, flowsCfm: Readonly<Record<string, Cfm>>): Record<Side, Cfm> {
  const sum = (side: Side) =>
    house.leaks.filter((leak) => leak.side === side).reduce((total, { id }) => total + flowsCfm[id]!, 0);
  return Object.fromEntries(SIDES.map((side) => [side, sum(side)])) as Record<Side, Cfm>;
}
