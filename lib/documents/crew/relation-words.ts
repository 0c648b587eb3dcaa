import type { ScopeOption } from "#lib/job/result/plan-result.ts";
import type { JobContext } from "../proposal/proposal-context.ts";

/** What a repair has to do with other leaks: what comes first, what is closed along with it, what is left to it. */
export function relationWords(
  { speaker, leaks }: Pick<JobContext, "speaker" | "leaks">,
  measure: ScopeOption["measures"][number],
): string[] {
  const say = (key: "crew.firstLeaks" | "crew.together" | "crew.notByHand", siteIds: readonly string[] = []) => {
    const numbers = leaks.filter(({ site }) => siteIds.includes(site.id)).map(({ number }) => String(number));
    if (numbers.length === 0) return [];
    const named = speaker.say("undone.leaks", { count: numbers.length, list: speaker.list(numbers) });
    return [speaker.say(key, { leaks: key === "crew.notByHand" ? named : named.toLowerCase() })];
  };
  return [
    ...say("crew.firstLeaks", measure.firstSiteIds),
    ...say("crew.together", measure.togetherWithSiteIds),
    ...say("crew.notByHand", measure.notByHandSiteIds),
  ];
}
