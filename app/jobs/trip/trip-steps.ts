import { TARGET_RULES } from "#lib/retest/targets.ts";
import type { UnitText } from "#lib/units/unit-text.ts";
import { type Draft, listAt, numberAt, textAt } from "./draft.ts";
import { choiceLabel } from "./field-words.ts";

/** The steps of a visit, in the order in which one walks through a house. */
export const TRIP_STEPS = ["house", "equipment", "ducts", "readings", "leaks", "energy", "plan"] as const;
export type TripStepId = (typeof TRIP_STEPS)[number];

export const isTripStep = (text: string): text is TripStepId => (TRIP_STEPS as readonly string[]).includes(text);

interface StepWords {
  label: string;
  question: string;
  reason: string;
  next: string;
}

export const STEP_WORDS: Readonly<Record<TripStepId, StepWords>> = {
  house: {
    label: "House",
    question: "What house is this?",
    reason: "Size and place decide how much heat it needs, and so what a leak costs.",
    next: "Continue to equipment",
  },
  equipment: {
    label: "Equipment",
    question: "What heats and cools it?",
    reason: "The nameplate is enough. What the equipment makes, the ducts then lose.",
    next: "Continue to ducts",
  },
  ducts: {
    label: "Ducts",
    question: "Where do the ducts run?",
    reason: "A leak into the attic is lost; the same leak inside the rooms is hardly a loss at all.",
    next: "Continue to readings",
  },
  readings: {
    label: "Readings",
    question: "What did the gauge read?",
    reason: "One step gives a number. Three make a line, and five a test that stands on its own.",
    next: "Continue to leaks",
  },
  leaks: {
    label: "Leaks",
    question: "Where does it leak?",
    reason: "Tag each leak as you see it. The readings then share themselves out over the leaks.",
    next: "Continue to energy",
  },
  energy: {
    label: "Energy",
    question: "What does the house use?",
    reason: "Real use keeps the savings honest: nothing can be saved that is not used.",
    next: "Continue to the plan",
  },
  plan: {
    label: "Plan",
    question: "What has the work to reach?",
    reason: "The target decides how far to go, and how sure to be.",
    next: "See the result",
  },
};

/** What was answered at a step, in small print; undefined where nothing is yet. */
export const STEP_DETAILS: Readonly<Record<TripStepId, (draft: Draft, text: UnitText) => string | undefined>> = {
  house: (draft, text) => {
    const area = numberAt(draft, "house/conditionedFloorAreaFt2");
    if (area === undefined) return undefined;
    const year = numberAt(draft, "house/builtYear");
    return [text.quantity(area, "ft²"), year === undefined ? textAt(draft, "house/zip") : String(year)]
      .filter(Boolean)
      .join(", ");
  },
  equipment: (draft) => {
    const kinds = listAt(draft, "systems").flatMap((system) => {
      const heating = textAt(system, "heating/kind");
      const cooling = textAt(system, "cooling/kind");
      if (heating) return [choiceLabel("systems/*/heating/kind", heating)];
      return cooling ? [choiceLabel("systems/*/cooling/kind", cooling)] : [];
    });
    return kinds.length === 0 ? undefined : [...new Set(kinds)].join(", ");
  },
  ducts: (draft) => {
    const runs = listAt(draft, "systems").flatMap((system) => listAt(system, "runs"));
    if (runs.length === 0) return undefined;
    const places = new Map(listAt(draft, "places").map((place) => [place.id, textAt(place, "kind") ?? ""]));
    const kinds = new Set(runs.map((run) => choiceLabel("places/*/kind", places.get(run.placeId ?? "") ?? "")));
    return [...kinds].join(", ");
  },
  readings: (draft) => count(listAt(draft, "tests").length, "test"),
  leaks: (draft) => count(listAt(draft, "sites").length, "leak"),
  energy: (draft) => {
    const bills = listAt(draft, "energy/bills").length;
    if (bills > 0) return count(bills, "bill");
    return textOf(draft, "energy/knownUse", "yearly use") ?? textOf(draft, "rates", "prices");
  },
  plan: (draft) => targetTitle(textAt(draft, "plan/targetId")) ?? textOf(draft, "plan", "own target"),
};

/** The rule by its title; one that is not known here by its own id, so that a typing error is seen. */
function targetTitle(id: string | undefined): string | undefined {
  return TARGET_RULES.find((rule) => rule.id === id)?.title ?? id;
}

function textOf(draft: Draft, key: string, words: string): string | undefined {
  return listAtLeastOne(draft, key) ? words : undefined;
}

function listAtLeastOne(draft: Draft, path: string): boolean {
  let value: unknown = draft;
  for (const key of path.split("/")) value = (value as Record<string, unknown> | undefined)?.[key];
  return typeof value === "object" && value !== null && Object.keys(value).length > 0;
}

const count = (number: number, word: string): string | undefined =>
  number === 0 ? undefined : `${number} ${word}${number === 1 ? "" : "s"}`;
