import { PLACE_LABELS, type PlaceKind } from "#lib/job/place.ts";
import { type Draft, listAt, textAt } from "../draft.ts";

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
