import { byId } from "./choices.ts";
import type { ScopeLeak, ScopeProblem } from "./scope-problem.ts";

/** Everything about a leak that the optimum can see, but its id. */
function traits(problem: ScopeProblem, leak: ScopeLeak): string {
  const { id, repairs, ...rest } = leak;
  const sprays = [...problem.systemRepairs]
    .sort(byId)
    .map((spray) => [
      spray.id,
      ...[spray.reachesLeakIds, spray.needsRepairedLeakIds, spray.sparesHandAtLeakIds].map((ids) => ids?.includes(id)),
    ]);
  return JSON.stringify([
    Object.entries(rest).sort(),
    [...repairs].sort(byId).map((repair) => Object.entries(repair).sort()),
    sprays,
  ]);
}

/** Pairs of neighbors by id among leaks that differ in nothing but their id and stand in no rule of their own. */
export function interchangeableLeaks(problem: ScopeProblem): [string, string][] {
  const inRules = new Set([
    ...problem.exclusions.flatMap((pair) => pair.map(({ leakId }) => leakId)),
    ...problem.prerequisites.flatMap(({ repair, needs }) => [repair.leakId, needs.leakId]),
  ]);
  const lastOfKind = new Map<string, string>();
  const pairs: [string, string][] = [];
  for (const leak of [...problem.leaks].sort(byId)) {
    if (inRules.has(leak.id) || leak.repairs.length === 0) continue;
    const key = traits(problem, leak);
    const previous = lastOfKind.get(key);
    if (previous !== undefined) pairs.push([previous, leak.id]);
    lastOfKind.set(key, leak.id);
  }
  return pairs;
}
