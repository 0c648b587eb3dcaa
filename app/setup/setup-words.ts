import type { FanDirection } from "#lib/job/instrument-schema.ts";
import type { SetupPhase } from "#lib/setup/rules/rule.ts";
import type { FanConnection, RegisterCover, Standpoint } from "#lib/setup/setup-answers.ts";
import type { Citation } from "#lib/sources/source.ts";
import { SOURCES } from "#lib/sources/sources.ts";
import type { SetupStage } from "./setup-query.ts";

export const PHASE_WORDS: Readonly<Record<SetupPhase, string>> = {
  "make-safe": "Make it safe",
  prepare: "Prepare house and ducts",
  connect: "Connect fans and hoses",
  run: "Run the test",
  "put-back": "Put everything back",
};

export const DIRECTION_WORDS: Readonly<Record<FanDirection, string>> = {
  pushing: "Push air in",
  pulling: "Pull air out",
};

export const CONNECTION_WORDS: Readonly<Record<FanConnection, string>> = {
  "central-return": "Central return grille",
  "air-handler-cabinet": "Air handler’s cabinet",
  "supply-plenum": "Supply plenum",
  "branch-register": "Register at the end of a branch",
};

export const STANDPOINT_WORDS: Readonly<Record<Standpoint, string>> = {
  house: "In the rooms",
  attic: "In the attic",
  crawlspace: "In the crawlspace",
  basement: "In the basement",
  garage: "In the garage",
  outdoors: "Outdoors",
};

export const COVER_WORDS: Readonly<Record<RegisterCover, string>> = {
  "adhesive-film": "Adhesive film",
  "cling-film": "Plain cling film",
};

export const STAGE_WORDS: Readonly<Record<SetupStage, string>> = {
  existing: "Existing ducts",
  "rough-in": "Rough-in, air handler in place",
  "rough-in-without": "Rough-in without the air handler",
  final: "Final",
};

/** What a rule stands on: the trade's practice, a standard, or plain physics. */
export function basisWords({ sourceId, locator }: Citation): string {
  if (sourceId === "practice") return "Practice";
  if (sourceId === "derived") return "Follows from physics";
  const author = SOURCES.find(({ id }) => id === sourceId)?.author ?? sourceId;
  return `Standard: ${author}${locator ? `, ${locator}` : ""}`;
}
