import type { CandidateRepair, ScopeLeak, ScopeProblem, SystemRepair } from "./scope-problem.ts";

/** One state a leak (or a system's unfound leakage) can end in, with what it changes. */
export interface Choice {
  /** The leak's id; null for the unfound leakage of a system. */
  leakId: string | null;
  /** Null: not repaired by hand. */
  repairId: string | null;
  /** Null: the system is not sprayed. */
  systemRepairId: string | null;
  costUsdCents: number;
  beforeTaxUsdCents: number;
  labourHours: number;
  removedCfm25: number;
  /** Variance of what is removed, cfm². */
  removedVariance: number;
  valueUsd: number;
}

/** All states of one leak but "left as it is", which is none of them. */
export interface ChoiceGroup {
  key: string;
  systemId: string;
  placeId: string | null;
  choices: readonly Choice[];
}

export const byId = <T extends { id: string }>(left: T, right: T): number =>
  left.id < right.id ? -1 : left.id > right.id ? 1 : 0;

/** The leak's flow in the measure of the target. */
export function countedShare(problem: ScopeProblem, leak: ScopeLeak): number {
  return problem.measure === "total" ? 1 : leak.toOutsideShare;
}

function choiceOf(
  problem: ScopeProblem,
  leak: ScopeLeak,
  repair: CandidateRepair | null,
  spray: SystemRepair | null,
): Choice {
  const share = countedShare(problem, leak);
  const flow = leak.cfm25 * share;
  const doubt = leak.standardUncertaintyCfm25 * share;
  const sprayShare = spray?.remainingShare ?? 1;
  const remaining = (repair?.remainingShare ?? 1) * sprayShare;
  const spread = (repair?.remainingSpreadShare ?? 0) * sprayShare;
  return {
    leakId: leak.id,
    repairId: repair?.id ?? null,
    systemRepairId: spray?.id ?? null,
    costUsdCents: repair?.costUsdCents ?? 0,
    beforeTaxUsdCents: repair?.beforeTaxUsdCents ?? 0,
    labourHours: repair?.labourHours ?? 0,
    removedCfm25: flow * (1 - remaining),
    removedVariance: (doubt * (1 - remaining)) ** 2 + (flow ** 2 + doubt ** 2) * spread ** 2,
    valueUsd: leak.lifetimeValueUsd * (1 - remaining),
  };
}

/**
 * Every state each leak can end in, in the order of the ids.
 * removed = Q (1 − f), variance = s² (1 − f)² + (Q² + s²) σ², with Q the flow, s its standard uncertainty, f the share
 * left and σ its spread; hand repair and spraying multiply. Source: own-method (product of independent quantities).
 */
export function listChoices(problem: ScopeProblem): ChoiceGroup[] {
  const sprays = [...problem.systemRepairs].sort(byId);
  const found = [...problem.leaks].sort(byId).map((leak): ChoiceGroup => {
    const repairs = [null, ...[...leak.repairs].sort(byId)];
    const reaching = [null, ...sprays.filter((spray) => spray.reachesLeakIds.includes(leak.id))];
    const choices = reaching.flatMap((spray) =>
      repairs
        .filter((repair) => repair !== null || spray !== null)
        .map((repair) => choiceOf(problem, leak, repair, spray)),
    );
    return { key: `leak ${leak.id}`, systemId: leak.systemId, placeId: leak.placeId, choices };
  });
  const unfound = problem.notYetFound
    .filter(({ systemId }) => sprays.some((spray) => spray.systemId === systemId))
    .sort((left, right) => (left.systemId < right.systemId ? -1 : 1))
    .map((hidden): ChoiceGroup => {
      const flow = problem.measure === "total" ? hidden.cfm25 : hidden.toOutsideCfm25;
      const choices = sprays
        .filter((spray) => spray.systemId === hidden.systemId)
        .map(
          (spray): Choice => ({
            leakId: null,
            repairId: null,
            systemRepairId: spray.id,
            costUsdCents: 0,
            beforeTaxUsdCents: 0,
            labourHours: 0,
            removedCfm25: flow * (1 - spray.remainingShare),
            removedVariance: 0,
            valueUsd: hidden.lifetimeValueUsd * (1 - spray.remainingShare),
          }),
        );
      return { key: `not yet found ${hidden.systemId}`, systemId: hidden.systemId, placeId: null, choices };
    });
  return [...found, ...unfound];
}

/**
 * Variance that one spraying adds: it goes well or badly for all it reaches at once, so its spread counts on the whole
 * flow within its reach. Never too small: what was sealed by hand before leaves less for it.
 */
export function sprayVariance(problem: ScopeProblem, spray: SystemRepair): number {
  const reached = problem.leaks.filter((leak) => spray.reachesLeakIds.includes(leak.id));
  const flow = reached.reduce((sum, leak) => sum + leak.cfm25 * countedShare(problem, leak), 0);
  const doubt = reached.reduce(
    (sum, leak) => sum + (leak.standardUncertaintyCfm25 * countedShare(problem, leak)) ** 2,
    0,
  );
  const hidden = problem.notYetFound
    .filter(({ systemId }) => systemId === spray.systemId)
    .reduce((sum, { cfm25, toOutsideCfm25 }) => sum + (problem.measure === "total" ? cfm25 : toOutsideCfm25), 0);
  return ((flow + hidden) ** 2 + doubt) * spray.remainingSpreadShare ** 2;
}

/** No scope brings more variance than this, cfm²: the largest state of each leak and every spraying. */
export function mostRemovedVariance(problem: ScopeProblem): number {
  const ofLeaks = listChoices(problem).map(({ choices }) =>
    Math.max(0, ...choices.map((choice) => choice.removedVariance)),
  );
  const ofSprays = problem.systemRepairs.map((spray) => sprayVariance(problem, spray));
  return [...ofLeaks, ...ofSprays].reduce((sum, variance) => sum + variance, 0);
}
