import { sum } from "d3-array";
import type { Side } from "#lib/job/duct-system.ts";
import type { PlaceKind } from "#lib/job/place.ts";
import { isCompact } from "../scene.ts";
import { type AirHandler, placeAirHandler, regionOf, type Zone } from "./air-handlers.ts";
import { type Branch, type DuctGroup, type GroupPlan, layLanes, spotsOf } from "./duct-group.ts";
import { axisToTrunk, type Port } from "./duct-routes.ts";
import { type HouseFrame, isUnderFloor, placeKindOf } from "./house-frame.ts";
import type { HouseSectionInput, SectionSystem } from "./house-section-input.ts";

export interface DuctLayout {
  airHandlers: readonly (AirHandler & { systemId: string; label?: string })[];
  groups: readonly DuctGroup[];
}

/** Draws every system's air handler and ducts into the frame. Ribbon width is proportional to flow, house-wide. */
export function layOutDucts({ input, frame }: { input: HouseSectionInput; frame: HouseFrame }): DuctLayout {
  const largestFlow = Math.max(
    1,
    ...input.systems.flatMap((s) => (["supply", "return"] as const).map((side) => flowOn(s, side))),
  );
  const widest = (isCompact(frame) ? 17 : 25) * (input.systems.length > 1 ? 0.8 : 1);
  const widthPerCfm = widest / largestFlow;

  const laidOut = input.systems.map((system, index) => {
    const kind = placeKindOf(input, system.airHandlerPlaceId);
    const plans = planGroups({ input, system, widthPerCfm, compact: isCompact(frame) });
    const zone = zoneOf({ input, frame, index });
    const isOneWay = flowsOneWay({ kind, plans });
    const shares = countInSamePlace({ input, index });
    const across = isOneWay ? 0.26 : shares.count > 1 && zone.isWholeHouse ? (shares.rank + 0.5) / shares.count : 0.5;
    const handler = placeAirHandler({ frame, kind, zone, across });
    const groups = plans.flatMap((plan) =>
      routeGroup({ frame, handler, plan, plans, zone, isOneWay, systemId: system.id }),
    );
    return { handler: { ...handler, systemId: system.id, label: system.label }, groups };
  });
  return { airHandlers: laidOut.map(({ handler }) => handler), groups: laidOut.flatMap(({ groups }) => groups) };
}

function flowOn(system: SectionSystem, side: Side): number {
  return sum(
    system.runs.filter((run) => run.side === side),
    (run) => run.flowCfm,
  );
}

function planGroups({
  input,
  system,
  widthPerCfm,
  compact,
}: {
  input: HouseSectionInput;
  system: SectionSystem;
  widthPerCfm: number;
  compact: boolean;
}): GroupPlan[] {
  const plans = new Map<string, { side: Side; kind: PlaceKind; flows: number[] }>();
  for (const run of system.runs) {
    const kind = placeKindOf(input, run.placeId);
    const key = `${run.side} ${kind}`;
    const plan = plans.get(key) ?? { side: run.side, kind, flows: [] };
    const openings = Math.max(1, Math.round(run.openingsCount ?? (run.side === "supply" ? 3 : 1)));
    plan.flows.push(...Array.from({ length: openings }, () => run.flowCfm / openings));
    plans.set(key, plan);
  }
  const most = (compact ? 4 : 7) - (input.systems.length > 1 ? 1 : 0);
  return [...plans.values()].map(({ side, kind, flows }) => ({
    side,
    kind,
    widths: mergeInto(flows, side === "supply" ? most : 2).map((flow) => Math.max(0.5, flow * widthPerCfm)),
  }));
}

/** Joins neighbors until at most `most` are left; the total stays. */
function mergeInto(flows: readonly number[], most: number): number[] {
  const size = Math.ceil(flows.length / most);
  const merged: number[] = [];
  for (let start = 0; start < flows.length; start += size) merged.push(sum(flows.slice(start, start + size)));
  return merged;
}

/** Supply to one side and return to the other, so that they do not cross where both lie in one place. */
function flowsOneWay({ kind, plans }: { kind: PlaceKind; plans: readonly GroupPlan[] }): boolean {
  if (kind === "attic" || (isUnderFloor(kind) && kind !== "belly" && kind !== "below-slab")) return true;
  const supplies = new Set(plans.filter(({ side }) => side === "supply").map((plan) => plan.kind));
  return plans.some((plan) => plan.side === "return" && plan.kind !== "conditioned" && supplies.has(plan.kind));
}

/** Systems that share no place each get the whole width; others stand side by side. */
function zoneOf({ input, frame, index }: { input: HouseSectionInput; frame: HouseFrame; index: number }) {
  const placesOf = (system: SectionSystem) =>
    new Set(system.runs.map((run) => placeKindOf(input, run.placeId)).filter((kind) => kind !== "conditioned"));
  const all = input.systems.map(placesOf);
  const doesShare = all.some((a, i) => all.some((b, j) => i < j && [...a].some((kind) => b.has(kind))));
  const count = input.systems.length;
  if (!doesShare || count === 1) return { left: frame.left, right: frame.right, isWholeHouse: true };
  const share = (frame.right - frame.left) / count;
  return { left: frame.left + index * share, right: frame.left + (index + 1) * share, isWholeHouse: false };
}

function countInSamePlace({ input, index }: { input: HouseSectionInput; index: number }) {
  const kinds = input.systems.map((system) => placeKindOf(input, system.airHandlerPlaceId));
  const isSame = (kind: PlaceKind) => kind === kinds[index];
  return { count: kinds.filter(isSame).length, rank: kinds.slice(0, index).filter(isSame).length };
}

function routeGroup({
  frame,
  handler,
  plan,
  plans,
  zone,
  isOneWay,
  systemId,
}: {
  frame: HouseFrame;
  handler: AirHandler;
  plan: GroupPlan;
  plans: readonly GroupPlan[];
  zone: Zone;
  isOneWay: boolean;
  systemId: string;
}): DuctGroup[] {
  const opensSideways = regionOf(frame, plan.kind).opens === "sideways";
  const flowsBothWays =
    plan.side === "supply" && !isOneWay && !opensSideways && handler.posture === "upright" && plan.widths.length > 1;
  const half = Math.ceil(plan.widths.length / 2);
  const directions: { heading: 1 | -1; widths: readonly number[] }[] = flowsBothWays
    ? [
        { heading: -1, widths: [...plan.widths.slice(0, half)].reverse() },
        { heading: 1, widths: plan.widths.slice(half) },
      ]
    : [{ heading: headingOf({ handler, side: plan.side }), widths: plan.widths }];

  const lanes = directions.flatMap(({ heading, widths }) => {
    const port: Port = { side: plan.side, heading, width: sum(widths), splits: flowsBothWays, plans };
    const { axis, fixedOpening } = axisToTrunk({ frame, handler, kind: plan.kind, port });
    const branches = fixedOpening
      ? [{ width: sum(widths), opening: fixedOpening }]
      : spreadOpenings({ frame, plan, plans, zone, heading, widths, start: axis[axis.length - 1]?.x ?? 0 });
    return layLanes({ axis, heading, branches });
  });
  return [{ systemId, side: plan.side, placeKind: plan.kind, lanes, spots: spotsOf(lanes) }];
}

function headingOf({ handler, side }: { handler: AirHandler; side: Side }): 1 | -1 {
  if (handler.posture === "beside-the-house") return handler.placeKind === "garage" ? -1 : 1;
  return side === "supply" ? 1 : -1;
}

function spreadOpenings({
  frame,
  plan,
  plans,
  zone,
  heading,
  widths,
  start,
}: {
  frame: HouseFrame;
  plan: GroupPlan;
  plans: readonly GroupPlan[];
  zone: Zone;
  heading: 1 | -1;
  widths: readonly number[];
  start: number;
}): Branch[] {
  const region = regionOf(frame, plan.kind);
  const compact = isCompact(frame);
  const gap = sum(widths) / 2 + (compact ? 14 : 24);
  // Where there is no room for the trunk, its openings crowd together rather than leave the house.
  const within = (x: number) => Math.min(zone.right - 4, Math.max(zone.left + 4, x));
  const near = within(start + heading * gap);
  const end = heading > 0 ? Math.min(region.reach.right, zone.right - 14) : Math.max(region.reach.left, zone.left + 14);
  const far = heading * (end - near) > 0 ? end : within(near + heading * 12);
  const others = plans.filter((other) => other.side === "supply" && other !== plan && other.kind !== "attic");
  const reachesAll = plan.side === "supply" && others.length === 0 && plan.kind !== "conditioned";
  return widths.map((width, index) => {
    const share = widths.length > 1 ? index / (widths.length - 1) : plan.side === "supply" ? 0.75 : 0.6;
    const storey = reachesAll && region.opens !== "sideways" ? index % frame.storeys.length : 0;
    return { width, opening: { x: near + (far - near) * share, y: openingYOf({ frame, kind: plan.kind, storey }) } };
  });
}

/** Every second branch of a house with storeys goes on through the wall to the next one. */
function openingYOf({ frame, kind, storey }: { frame: HouseFrame; kind: PlaceKind; storey: number }): number {
  const region = regionOf(frame, kind);
  if (storey === 0) return region.openingY;
  if (region.opens === "up") {
    const box = frame.storeys[storey];
    return box ? box.y + box.height : region.openingY;
  }
  return frame.storeys[frame.storeys.length - 1 - storey]?.y ?? region.openingY;
}
