import { InputProblem } from "#lib/errors/input-problem.ts";
import type { Draft } from "./draft.ts";

const LARGEST_DRAFT_CHARACTERS = 2_000_000;

/** What a form sends may be anything: it has to be JSON, an object, and of a sensible size. */
export function plainDraft(received: unknown): Draft {
  const text = JSON.stringify(received) ?? "";
  const draft: unknown = text.length > LARGEST_DRAFT_CHARACTERS ? undefined : JSON.parse(text === "" ? "null" : text);
  if (typeof draft === "object" && draft !== null && !Array.isArray(draft)) return draft as Draft;
  throw new InputProblem("input-unusable", [], "A job is a JSON object of at most 2 MB");
}
