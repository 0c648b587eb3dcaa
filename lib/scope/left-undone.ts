import { formatNumber, formatUsd, formatUsdCents } from "#lib/units/format.ts";
import type { ChosenScope, ScopeLeak, ScopeProblem } from "./scope-problem.ts";

export type UndoneReason =
  | "no-repair"
  | "suspected-asbestos"
  | "costs-more-than-it-saves"
  | "target-reached-without-it"
  | "left-for-later"
  | "limit-reached"
  | "would-not-help"
  | "run-comes-first"
  | "not-chosen";

export interface UndoneLeak {
  siteId: string;
  code: UndoneReason;
  why: string;
}

/** What the option was chosen for, which decides why it leaves a leak. */
export type OptionAim = "essential" | "target" | "everything" | "closest" | "limited" | "chosen";

function cheapestUsdCents({ repairs }: ScopeLeak): number {
  return Math.min(...repairs.map(({ costUsdCents }) => costUsdCents));
}

function reasonFor(leak: ScopeLeak, aim: OptionAim): Omit<UndoneLeak, "siteId"> {
  const price = formatUsdCents(cheapestUsdCents(leak));
  const worth = formatUsd(Math.max(0, leak.lifetimeValueUsd));
  const isWorthIt = leak.lifetimeValueUsd * 100 > cheapestUsdCents(leak);
  switch (aim) {
    case "everything":
      return isWorthIt
        ? {
            code: "costs-more-than-it-saves",
            why: `With what it shares with others it costs more than the ${worth} it would save`,
          }
        : {
            code: "costs-more-than-it-saves",
            why: `Costs at least ${price} and would save about ${worth} over the years`,
          };
    case "target":
      return {
        code: "target-reached-without-it",
        why: isWorthIt
          ? `The target is reached without it; it would still pay for itself (from ${price}, saves about ${worth})`
          : "The target is reached without it",
      };
    case "essential":
      return { code: "left-for-later", why: `Removes less for its price than what is done here (from ${price})` };
    case "closest":
      return { code: "would-not-help", why: "Sealing it would not lower what can be promised" };
    case "chosen":
      return { code: "not-chosen", why: "Not among the measures chosen" };
    case "limited":
      return { code: "limit-reached", why: `Beyond the budget or the hours set (from ${price})` };
  }
}

/** Whether every repair of a leak comes after one at another leak that is left as it is too. */
const waitsForRun = ({ prerequisites }: ScopeProblem, { id, repairs }: ScopeLeak, done: ReadonlySet<string>): boolean =>
  repairs.every((repair) =>
    prerequisites.some(
      (rule) => rule.repair.leakId === id && rule.repair.repairId === repair.id && !done.has(rule.needs.leakId),
    ),
  );

/** Every leak that a scope leaves as it is, and why, in the order of the ids. */
export function leavesUndone({
  problem,
  scope,
  aim,
  asbestosSiteIds,
}: {
  problem: ScopeProblem;
  scope: Pick<ChosenScope, "measures" | "systemRepairIds">;
  aim: OptionAim;
  asbestosSiteIds: readonly string[];
}): UndoneLeak[] {
  const done = new Set([
    ...scope.measures.map(({ leakId }) => leakId),
    ...problem.systemRepairs
      .filter(({ id }) => scope.systemRepairIds.includes(id))
      .flatMap(({ reachesLeakIds }) => reachesLeakIds),
  ]);
  return problem.leaks
    .filter(({ id }) => !done.has(id))
    .map((leak): UndoneLeak => {
      if (asbestosSiteIds.includes(leak.id)) {
        const why = "Material that may hold asbestos: licensed people come first";
        return { siteId: leak.id, code: "suspected-asbestos", why };
      }
      if (leak.repairs.length === 0)
        return { siteId: leak.id, code: "no-repair", why: "No repair in the catalogue fits it" };
      if (waitsForRun(problem, leak, done)) {
        const why = "Makes sense only once the run or return path it is on is repaired";
        return { siteId: leak.id, code: "run-comes-first", why };
      }
      return { siteId: leak.id, ...reasonFor(leak, aim) };
    })
    .sort((one, other) => (one.siteId < other.siteId ? -1 : 1));
}

/** Leakage that no one has found and that this scope does not reach. */
export function unfoundLeft(problem: ScopeProblem, systemRepairIds: readonly string[]): number {
  return problem.notYetFound.reduce((sum, { systemId, cfm25, toOutsideCfm25 }) => {
    const spray = problem.systemRepairs.find(
      (repair) => repair.systemId === systemId && systemRepairIds.includes(repair.id),
    );
    return sum + (problem.measure === "total" ? cfm25 : toOutsideCfm25) * (spray?.remainingShare ?? 1);
  }, 0);
}

/** Leakage as the texts of a scope give it. */
export const sayCfm25 = (cfm25: number): string => `${formatNumber(Math.max(0, cfm25))} cfm at 25 Pa`;
