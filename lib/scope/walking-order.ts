import type { DuctSystem } from "#lib/job/duct-system.ts";
import { LEAK_KINDS, type PressureGroup } from "#lib/job/leak-kinds.ts";
import type { DuctPart, LeakSite } from "#lib/job/leak-site.ts";
import type { Cfm } from "#lib/units/quantity.ts";

/** How far out along the ducts: the cabinet first, the registers last. */
const STEPS_OUT: Readonly<Record<DuctPart | PressureGroup, number>> = {
  cabinet: 0,
  plenum: 1,
  "cabinet-or-plenum": 1,
  trunk: 2,
  "take-off": 3,
  boot: 4,
};

type WalkedSite = Pick<LeakSite, "id" | "systemId" | "side" | "placeId" | "kind" | "drawnAt" | "partOfSiteId">;

export interface WalkedMeasure {
  /** The leak's id; the system's for a whole-system repair. */
  siteId: string;
  removesCfm25: Cfm;
  firstSiteIds?: readonly string[] | undefined;
}

/** The work of one place, leak by leak; no place for what is done to a whole system. */
export interface WalkStage {
  placeId: string | null;
  siteIds: string[];
}

interface Stop {
  site: WalkedSite;
  removesCfm25: Cfm;
  after: readonly string[];
}

function stepsOut({ kind, drawnAt }: WalkedSite): number {
  if (drawnAt) return STEPS_OUT[drawnAt.part];
  return kind === "air-handler-cabinet" || kind === "filter-slot"
    ? STEPS_OUT.cabinet
    : STEPS_OUT[LEAK_KINDS[kind].pressureGroup];
}

/** Out along the ducts of one place: system by system, cabinet and plenum, then the supply side and the return side. */
function outward(one: Stop, other: Stop): number {
  const key = ({ site, removesCfm25 }: Stop) => {
    const steps = stepsOut(site);
    const isAtUnit = steps <= STEPS_OUT.plenum;
    return [
      isAtUnit ? 0 : 1,
      isAtUnit ? steps : 0,
      site.side === "supply" ? 0 : 1,
      steps,
      site.drawnAt?.alongShare ?? 0,
      -removesCfm25,
    ];
  };
  if (one.site.systemId !== other.site.systemId) return one.site.systemId < other.site.systemId ? -1 : 1;
  const [left, right] = [key(one), key(other)];
  const at = left.findIndex((value, index) => value !== right[index]);
  return at < 0 ? (one.site.id < other.site.id ? -1 : 1) : left[at]! - right[at]!;
}

/** Puts each stop behind those it comes after, and otherwise leaves the order as it is. */
function afterWhatComesFirst(stops: readonly Stop[]): Stop[] {
  const left = [...stops];
  const done: Stop[] = [];
  while (left.length > 0) {
    const at = left.findIndex(({ after }) => !left.some(({ site }) => after.includes(site.id)));
    done.push(...left.splice(Math.max(0, at), 1));
  }
  return done;
}

/** Where an air handler stands, as said or as its own leaks tell. */
function unitPlaces(systems: readonly Pick<DuctSystem, "id" | "airHandlerPlaceId">[], stops: readonly Stop[]) {
  const places = systems.flatMap(({ id, airHandlerPlaceId }) =>
    airHandlerPlaceId !== undefined
      ? [airHandlerPlaceId]
      : stops
          .filter(({ site }) => site.systemId === id && stepsOut(site) <= STEPS_OUT.plenum)
          .map(({ site }) => site.placeId),
  );
  return new Set(places);
}

/**
 * The order in which a crew does the work: the place of the air handler first, then place by place, the one with most
 * to seal first; within a place from the cabinet along trunk and branches to the registers; a leak that must come first
 * does, and spraying comes last. Each place is one stage, so it is set up and crossed once; only where two places each
 * wait for the other is one of them entered twice. Source: practice.
 */
export function walkingOrder({
  measures,
  sites,
  systems,
}: {
  measures: readonly WalkedMeasure[];
  sites: readonly WalkedSite[];
  systems: readonly Pick<DuctSystem, "id" | "airHandlerPlaceId">[];
}): WalkStage[] {
  const stops = measures.flatMap(({ siteId, removesCfm25, firstSiteIds = [] }): Stop[] => {
    const site = sites.find(({ id }) => id === siteId);
    if (!site) return [];
    const after = [...firstSiteIds, ...(site.partOfSiteId === undefined ? [] : [site.partOfSiteId])];
    return [{ site, removesCfm25, after: after.filter((id) => measures.some((each) => each.siteId === id)) }];
  });
  const units = unitPlaces(systems, stops);
  const removedAt = (placeId: string) =>
    stops.reduce((sum, { site, removesCfm25 }) => sum + (site.placeId === placeId ? removesCfm25 : 0), 0);
  const places = [...new Set(stops.map(({ site }) => site.placeId))].sort(
    (one, other) =>
      Number(units.has(other)) - Number(units.has(one)) || removedAt(other) - removedAt(one) || (one < other ? -1 : 1),
  );
  const stages: WalkStage[] = [];
  let left = stops;
  while (left.length > 0) {
    const isReady = ({ after, site }: Stop) =>
      !left.some((each) => after.includes(each.site.id) && each.site.placeId !== site.placeId);
    const waiting = places.filter((placeId) => left.some(({ site }) => site.placeId === placeId));
    const at = (placeId: string) => left.filter(({ site }) => site.placeId === placeId);
    const next =
      waiting.find((placeId) => at(placeId).every(isReady)) ?? waiting.find((placeId) => at(placeId).some(isReady))!;
    const now = afterWhatComesFirst(at(next).filter(isReady).sort(outward));
    stages.push({ placeId: next, siteIds: now.map(({ site }) => site.id) });
    left = left.filter((stop) => !now.includes(stop));
  }
  const whole = measures.filter(({ siteId }) => !sites.some(({ id }) => id === siteId));
  return whole.length > 0 ? [...stages, { placeId: null, siteIds: whole.map(({ siteId }) => siteId) }] : stages;
}
