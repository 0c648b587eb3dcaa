import { createLedger } from "#lib/estimate/ledger.ts";
import { readTests } from "#lib/estimate/read-tests.ts";
import { formatNumber } from "#lib/units/format.ts";
import type { Feet } from "#lib/units/quantity.ts";
import type { Claim } from "../claim-schema.ts";
import { type ClaimFlag, type FlagCode, type FlagEvidence, flag } from "./claim-flag.ts";

const BTU_PER_H_PER_TON = 12_000;
/** Blowers are set to about 400 cfm for each ton of cooling; beyond these one asks. Source: practice. */
const LOWEST_CFM_PER_TON = 200;
const HIGHEST_CFM_PER_TON = 600;

/** Notes of the reading methods that bear on a claim. */
const CODES_OF_NOTES: Readonly<Record<string, FlagCode>> = {
  "to-outside-above-total": "to-outside-above-total",
  "exponent-outside-range": "exponent-unusual",
  "fan-pressure-outside-span": "fan-pressure-outside-span",
};

function flowEvidence({ job }: Pick<Claim, "job">): FlagEvidence[] {
  return job.systems.flatMap(({ label, cooling, blower }, index) => {
    if (cooling?.capacityBtuPerH === undefined || blower?.fanFlowCfm === undefined) return [];
    const cfmPerTon = blower.fanFlowCfm / (cooling.capacityBtuPerH / BTU_PER_H_PER_TON);
    if (cfmPerTon >= LOWEST_CFM_PER_TON && cfmPerTon <= HIGHEST_CFM_PER_TON) return [];
    return [
      {
        path: `#/job/systems/${index}/blower/fanFlowCfm`,
        says: `${label}: ${formatNumber(blower.fanFlowCfm)} cfm is ${formatNumber(cfmPerTon)} cfm for each ton of cooling`,
      },
    ];
  });
}

/** Compares `energy/<fuel>/before…` with `energy/<fuel>/saved…` of the claimed numbers. */
function savedEvidence({ numbers }: Pick<Claim, "numbers">): FlagEvidence[] {
  return Object.entries(numbers).flatMap(([path, [saved]]) => {
    const before = numbers[path.replace("/saved", "/before")]?.[0];
    if (!/^energy\/[^/]+\/saved/.test(path) || saved === undefined || before === undefined || saved <= before)
      return [];
    return [
      { path: `#/numbers/${path}`, says: `${formatNumber(saved)} saved of ${formatNumber(before)} used (${path})` },
    ];
  });
}

function leakageEvidence({ numbers }: Pick<Claim, "numbers">): FlagEvidence[] {
  const fraction = numbers["leakage/fractionOfFanFlow"]?.[0];
  if (fraction === undefined || fraction <= 1) return [];
  return [
    {
      path: "#/numbers/leakage/fractionOfFanFlow",
      says: `Leakage to outside at 25 Pa is ${formatNumber(fraction)} times the blower's flow`,
    },
  ];
}

/** What nature does not do, or does rarely. Elevation thins the air that the test fan moves. */
export function physicsFlags(claim: Claim, elevationFt: Feet): ClaimFlag[] {
  const ledger = createLedger();
  readTests({ job: claim.job, elevationFt, ledger });
  const notes = Object.entries(CODES_OF_NOTES).flatMap(([noteCode, code]) =>
    flag(
      code,
      ledger.warnings
        .filter((each) => each.code === noteCode)
        .map(({ path, what }) => ({ path: `#/job${path.slice(1)}`, says: what })),
    ),
  );
  return [
    ...notes,
    ...flag("fan-flow-against-capacity", flowEvidence(claim)),
    ...flag("leakage-above-fan-flow", leakageEvidence(claim)),
    ...flag("saved-above-used", savedEvidence(claim)),
  ];
}
