import type { Source } from "./source.ts";
import { SOURCES } from "./sources.ts";

const BY_ID = new Map<string, Source>(SOURCES.map((source) => [source.id, source]));

/** Nothing is told by naming this project as the author of its own work. */
const OWN = "this project";

/** Author and title of a source by its id. */
export function sourceTitle(sourceId: string): string {
  const source = BY_ID.get(sourceId);
  if (!source) return sourceId;
  return source.author === OWN ? source.title : `${source.author}: ${source.title}`;
}

/**
 * A citation as people read it: author, title, year, place in the text, and how far it was at hand, unless the title or
 * the place says so already.
 */
export function citationText({ sourceId, locator }: { sourceId: string; locator?: string }): string {
  const source = BY_ID.get(sourceId);
  const work = [`${sourceTitle(sourceId)}${source?.year ? ` (${source.year})` : ""}`, locator]
    .filter(Boolean)
    .join(", ");
  return source?.basis === "from-memory" && !work.includes("from memory") ? `${work}, from memory` : work;
}
