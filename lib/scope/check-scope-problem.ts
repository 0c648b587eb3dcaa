import { refuse } from "#lib/errors/input-problem.ts";
import type { CandidateRepair, ScopeGoal, ScopeProblem } from "./scope-problem.ts";

/** The rarest and the surest promise that a normal distribution can be asked for. */
const LOWEST_PROBABILITY = 0.5;
const HIGHEST_PROBABILITY = 0.999;
const MOST_USD_CENTS = 1e9;

function checkNumber(field: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) {
    refuse({ field, detail: `Must be between ${low} and ${high}, not ${value}`, fix: "Correct the value." });
  }
}

function checkCents(field: string, value: number): void {
  checkNumber(field, value, 0, MOST_USD_CENTS);
  if (!Number.isInteger(value))
    refuse({ field, detail: `Must be whole cents, not ${value}`, fix: "Round it once, by the price book." });
}

function checkUnique(field: string, ids: readonly string[]): void {
  const twice = ids.find((id, index) => ids.indexOf(id) !== index);
  if (twice !== undefined) refuse({ field, detail: `The id ${twice} stands twice`, fix: "Give each one its own id." });
}

function checkRepair(field: string, repair: CandidateRepair): void {
  checkCents(`${field}/costUsdCents`, repair.costUsdCents);
  checkCents(`${field}/beforeTaxUsdCents`, repair.beforeTaxUsdCents);
  checkNumber(`${field}/labourHours`, repair.labourHours, 0, 1000);
  checkNumber(`${field}/remainingShare`, repair.remainingShare, 0, 1);
  checkNumber(`${field}/remainingSpreadShare`, repair.remainingSpreadShare, 0, 1);
}

/** Every rule speaks of leaks and repairs that exist; one that does not would silently forbid or allow. */
function checkRules({ leaks, systemRepairs, exclusions, prerequisites }: ScopeProblem): void {
  const repairsOf = new Map(leaks.map((leak) => [leak.id, leak.repairs.map(({ id }) => id)]));
  const known = (field: string, { leakId, repairId }: ScopeProblem["prerequisites"][number]["needs"]): void => {
    const repairs = repairsOf.get(leakId);
    if (repairs && (repairId === null || repairs.includes(repairId))) return;
    refuse({
      field,
      detail: `There is no repair ${repairId} of a leak ${leakId}`,
      fix: "Name a leak and one of its repairs.",
    });
  };
  exclusions.forEach((pair, index) => {
    for (const repair of pair) known(`#/exclusions/${index}`, repair);
  });
  prerequisites.forEach(({ repair, needs }, index) => {
    known(`#/prerequisites/${index}/repair`, repair);
    known(`#/prerequisites/${index}/needs`, needs);
  });
  systemRepairs.forEach(({ reachesLeakIds, needsRepairedLeakIds, sparesHandAtLeakIds = [] }, index) => {
    const stranger = [...reachesLeakIds, ...needsRepairedLeakIds, ...sparesHandAtLeakIds].find(
      (id) => !repairsOf.has(id),
    );
    if (stranger === undefined) return;
    refuse({
      field: `#/systemRepairs/${index}`,
      detail: `There is no leak ${stranger}`,
      fix: "Name leaks of this problem.",
    });
  });
}

/** @throws InputProblem naming the first value that cannot be used. */
export function checkScopeProblem(problem: ScopeProblem): void {
  checkRules(problem);
  checkNumber("#/beforeCfm25", problem.beforeCfm25, 0, 1e5);
  checkNumber("#/beforeStandardUncertaintyCfm25", problem.beforeStandardUncertaintyCfm25, 0, 1e5);
  checkUnique(
    "#/leaks",
    problem.leaks.map(({ id }) => id),
  );
  checkUnique(
    "#/systemRepairs",
    problem.systemRepairs.map(({ id }) => id),
  );
  checkUnique(
    "#/sharedCosts",
    problem.sharedCosts.map(({ id }) => id),
  );
  checkUnique(
    "#/notYetFound",
    problem.notYetFound.map(({ systemId }) => systemId),
  );
  problem.leaks.forEach((leak, index) => {
    const field = `#/leaks/${index}`;
    checkNumber(`${field}/cfm25`, leak.cfm25, 0, 1e5);
    checkNumber(`${field}/standardUncertaintyCfm25`, leak.standardUncertaintyCfm25, 0, 1e5);
    checkNumber(`${field}/toOutsideShare`, leak.toOutsideShare, 0, 1);
    checkNumber(`${field}/operatingCfm`, leak.operatingCfm, 0, 1e5);
    checkNumber(`${field}/lifetimeValueUsd`, leak.lifetimeValueUsd, -1e7, 1e7);
    checkUnique(
      `${field}/repairs`,
      leak.repairs.map(({ id }) => id),
    );
    leak.repairs.forEach((repair, at) => {
      checkRepair(`${field}/repairs/${at}`, repair);
    });
  });
  problem.systemRepairs.forEach((repair, index) => {
    checkRepair(`#/systemRepairs/${index}`, repair);
  });
  problem.notYetFound.forEach(({ cfm25, toOutsideCfm25, lifetimeValueUsd }, index) => {
    checkNumber(`#/notYetFound/${index}/cfm25`, cfm25, 0, 1e5);
    checkNumber(`#/notYetFound/${index}/toOutsideCfm25`, toOutsideCfm25, 0, 1e5);
    checkNumber(`#/notYetFound/${index}/lifetimeValueUsd`, lifetimeValueUsd, -1e7, 1e7);
  });
  problem.sharedCosts.forEach((shared, index) => {
    checkCents(`#/sharedCosts/${index}/costUsdCents`, shared.costUsdCents);
    checkCents(`#/sharedCosts/${index}/beforeTaxUsdCents`, shared.beforeTaxUsdCents);
    checkNumber(`#/sharedCosts/${index}/labourHours`, shared.labourHours, 0, 1000);
  });
  if (problem.visits !== null) {
    checkNumber("#/visits/labourHoursEach", problem.visits.labourHoursEach, 0.1, 1000);
    checkCents("#/visits/costUsdCents", problem.visits.costUsdCents);
    checkCents("#/visits/beforeTaxUsdCents", problem.visits.beforeTaxUsdCents);
  }
  if (problem.minimumCharge !== null) {
    checkCents("#/minimumCharge/minimumUsdCents", problem.minimumCharge.minimumUsdCents);
    problem.minimumCharge.topUpTaxRates.forEach((taxRate, index) => {
      checkNumber(`#/minimumCharge/topUpTaxRates/${index}`, taxRate, 0, 1);
    });
  }
}

/** @throws InputProblem naming the first value of the goal that cannot be used. */
export function checkScopeGoal({ target, budgetUsdCents, labourHours, leastRemovedCfm25 }: ScopeGoal): void {
  if (target) {
    checkNumber("#/goal/target/limitCfm25", target.limitCfm25, 0, 1e5);
    checkNumber("#/goal/target/probability", target.probability, LOWEST_PROBABILITY, HIGHEST_PROBABILITY);
  }
  if (budgetUsdCents !== undefined) checkCents("#/goal/budgetUsdCents", budgetUsdCents);
  if (labourHours !== undefined) checkNumber("#/goal/labourHours", labourHours, 0, 1e5);
  if (leastRemovedCfm25 !== undefined) checkNumber("#/goal/leastRemovedCfm25", leastRemovedCfm25, 0, 1e5);
}
