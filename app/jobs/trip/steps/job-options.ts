import { LEAK_KINDS, type LeakKindId } from "#lib/job/leak-kinds.ts";
import { PLACE_LABELS, type PlaceKind } from "#lib/job/place.ts";
import { type Draft, listAt, textAt } from "../draft.ts";

/** What a run or return path is put down as: the kinds that new duct takes the place of. */
const COVERING_KINDS: ReadonlySet<LeakKindId> = new Set([
  "disconnected-run",
  "damaged-run",
  "crossover",
  "cracked-board",
  "panned-joist-return",
  "platform-return",
  "building-cavity",
]);

interface Option {
  value: string;
  label: string;
}

/** The places of this house, to choose from. */
export function placeOptions(draft: Draft): Option[] {
  return listAt(draft, "places").map((place) => {
    const kind = textAt(place, "kind") as PlaceKind | undefined;
    const words = kind ? PLACE_LABELS[kind] : "place";
    const name = textAt(place, "label") ?? words.charAt(0).toUpperCase() + words.slice(1);
    return { value: String(place.id), label: name };
  });
}

export function systemOptions(draft: Draft): Option[] {
  return listAt(draft, "systems").map((system, index) => ({
    value: String(system.id),
    label: textAt(system, "label") ?? `System ${index + 1}`,
  }));
}

/** Leaks that stand for a run or return path: those that new duct can be put in for, of the same system and side. */
export function runLeakOptions(draft: Draft, site: Draft): Option[] {
  const sites = listAt(draft, "sites");
  return sites.flatMap((other, index) => {
    const kind = textAt(other, "kind") as LeakKindId | undefined;
    const isRun = kind !== undefined && COVERING_KINDS.has(kind) && textAt(other, "partOfSiteId") === undefined;
    if (other.id === site.id || !isRun || other.side !== site.side || other.systemId !== site.systemId) return [];
    return [{ value: String(other.id), label: `${index + 1}. ${textAt(other, "label") ?? LEAK_KINDS[kind].label}` }];
  });
}

export function fanOptions(draft: Draft): Option[] {
  return listAt(draft, "instruments/fans").map((fan, index) => ({
    value: String(fan.id),
    label: textAt(fan, "name") ?? `Test fan ${index + 1}`,
  }));
}

export function gaugeOptions(draft: Draft): Option[] {
  return listAt(draft, "instruments/gauges").map((gauge, index) => ({
    value: String(gauge.id),
    label: textAt(gauge, "name") ?? `Gauge ${index + 1}`,
  }));
}

/** The flow restrictors that the calibration of a fan names in one direction; each has a calibration of its own. */
export function restrictorOptions(draft: Draft, test: Draft): Option[] {
  const fan = listAt(draft, "instruments/fans").find((each) => each.id === test.fanId);
  const rows = fan ? listAt(fan, "calibrations").filter((row) => row.direction === test.direction) : [];
  const labels = new Map(rows.map((row) => [String(row.restrictorId), textAt(row, "restrictorLabel") ?? ""]));
  return [...labels].map(([value, label]) => ({ value, label: label === "" ? value : label }));
}
