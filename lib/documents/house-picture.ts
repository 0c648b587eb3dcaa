import { LEAK_KINDS, type PressureGroup } from "#lib/job/leak-kinds.ts";
import type { DuctPart } from "#lib/job/leak-site.ts";
import type { HouseSectionInput, SectionLeak } from "#lib/pictures/house/house-section-input.ts";
import type { JobContext } from "./proposal/proposal-context.ts";

const SPOTS: Readonly<Record<PressureGroup, DuctPart>> = {
  "cabinet-or-plenum": "plenum",
  trunk: "trunk",
  "take-off": "take-off",
  boot: "boot",
};

/** Below this a dashed disc would only crowd the drawing. */
const LEAST_UNFOUND_CFM = 5;

/** The cut through this house with its ducts and numbered leaks; those in `sealedSiteIds` are drawn as sealed. */
export function housePicture(
  { job, result, leaks }: JobContext,
  { sealedSiteIds = [] }: { sealedSiteIds?: readonly string[] } = {},
): HouseSectionInput {
  return {
    kind: job.house.kind,
    storeysCount: job.house.storeysCount ?? 1,
    places: job.places.map(({ id, kind, label }) => ({ id, kind, ...(label ? { label } : {}) })),
    systems: job.systems.map((system) => {
      const found = result.systems.find(({ id }) => id === system.id);
      return {
        id: system.id,
        label: system.label,
        airHandlerPlaceId: system.airHandlerPlaceId,
        runs: system.runs.map(({ id, side, placeId }) => ({
          id,
          side,
          placeId,
          flowCfm: found?.runs.find((run) => run.id === id)?.airBeforeCfm ?? 0,
        })),
        leaks: leaks
          .filter(({ site }) => site.systemId === system.id)
          .map(
            ({ site, number, label, result: leak }): SectionLeak => ({
              id: site.id,
              number,
              side: site.side,
              placeId: site.placeId,
              cfm25: leak.cfm25.value,
              label,
              state: sealedSiteIds.includes(site.id) ? "sealed" : "open",
              spot: site.kind === "air-handler-cabinet" ? "cabinet" : SPOTS[LEAK_KINDS[site.kind].pressureGroup],
              ...(site.drawnAt ? { drawnAt: site.drawnAt } : {}),
            }),
          ),
        notYetFound: (["supply", "return"] as const)
          .map((side) => ({
            side,
            cfm25: result.notYetFound
              .filter((cell) => cell.systemId === system.id && cell.side === side)
              .reduce((sum, cell) => sum + cell.cfm25.value, 0),
          }))
          .filter(({ cfm25 }) => cfm25 >= LEAST_UNFOUND_CFM),
      };
    }),
  };
}
