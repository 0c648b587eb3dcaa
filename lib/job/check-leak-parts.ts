import type { FieldProblem } from "#lib/errors/input-problem.ts";
import type { LeakSite } from "./leak-site.ts";

/** A leak on the run of another one: that one exists, is of the same system and side, and is on no run of a third. */
export function checkLeakParts(sites: readonly LeakSite[]): FieldProblem[] {
  return sites.flatMap((site, index): FieldProblem[] => {
    if (site.partOfSiteId === undefined) return [];
    const pointer = `#/sites/${index}/partOfSiteId`;
    const main = sites.find(({ id }) => id === site.partOfSiteId);
    const problem = (code: string, detail: string, fix: string): FieldProblem[] => [{ pointer, detail, code, fix }];
    if (!main)
      return problem("link-broken", `No leak has the id “${site.partOfSiteId}”`, "Name a leak of this job, or none.");
    if (main === site) return problem("does-not-fit", "The leak is named as being on its own run", "Name none.");
    if (main.partOfSiteId !== undefined)
      return problem(
        "does-not-fit",
        `“${main.id}” is itself on the run of “${main.partOfSiteId}”`,
        `Name “${main.partOfSiteId}” for both.`,
      );
    if (main.systemId !== site.systemId || main.side !== site.side)
      return problem(
        "does-not-fit",
        `“${main.id}” is on another system or on the other side`,
        "A run is of one system and one side: correct the side, or name none.",
      );
    return [];
  });
}
