import type { Job } from "#lib/job/job-schema.ts";
import { LEAK_KINDS, type LeakKindId } from "#lib/job/leak-kinds.ts";
import type { DuctPart } from "#lib/job/leak-site.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import type { HouseSectionInput, SectionSystem } from "../house/house-section-input.ts";
import { chosenOption } from "./chosen-option.ts";

const SPOTS = { trunk: "trunk", "take-off": "take-off", boot: "boot" } as const;

function spotOf(kind: LeakKindId): DuctPart {
  const { pressureGroup } = LEAK_KINDS[kind];
  if (pressureGroup !== "cabinet-or-plenum") return SPOTS[pressureGroup];
  return kind === "plenum-joint" || kind === "platform-return" ? "plenum" : "cabinet";
}

/** This house, cut open, with the leaks as the estimate found them; `when` says whether the chosen work is done. */
export function houseSectionOfResult({
  job,
  result,
  when,
}: {
  job: Job;
  result: Result;
  when: "before" | "after";
}): HouseSectionInput {
  const sealed = new Set(when === "after" ? chosenOption(result)?.measures.map((measure) => measure.siteId) : []);
  const siteResults = new Map(result.sites.map((site) => [site.id, site]));
  const systems = job.systems.map((system): SectionSystem => {
    const answer = result.systems.find(({ id }) => id === system.id);
    const flows = new Map(answer?.runs.map((run) => [run.id, when === "after" ? run.airAfterCfm : run.airBeforeCfm]));
    return {
      id: system.id,
      ...(job.systems.length > 1 ? { label: system.label } : {}),
      ...(system.airHandlerPlaceId ? { airHandlerPlaceId: system.airHandlerPlaceId } : {}),
      runs: system.runs.map(({ id, side, placeId }) => ({ id, side, placeId, flowCfm: flows.get(id) ?? 0 })),
      leaks: job.sites.flatMap((site, index) =>
        site.systemId === system.id
          ? [
              {
                id: site.id,
                number: index + 1,
                side: site.side,
                placeId: site.placeId,
                cfm25: siteResults.get(site.id)?.cfm25.value ?? 0,
                label: site.label ?? LEAK_KINDS[site.kind].label,
                state: sealed.has(site.id) ? ("sealed" as const) : ("open" as const),
                spot: spotOf(site.kind),
                ...(site.drawnAt ? { drawnAt: site.drawnAt } : {}),
              },
            ]
          : [],
      ),
      notYetFound: (["supply", "return"] as const).map((side) => ({
        side,
        cfm25: result.notYetFound
          .filter((cell) => cell.systemId === system.id && cell.side === side)
          .reduce((sum, cell) => sum + cell.cfm25.value, 0),
      })),
    };
  });
  return {
    kind: job.house.kind,
    storeysCount: job.house.storeysCount ?? 1,
    places: job.places.map(({ id, kind, label }) => ({ id, kind, ...(label ? { label } : {}) })),
    systems,
  };
}
