import type { Source } from "./source.ts";
import { SOURCES } from "./sources.ts";

const BY_ID = new Map<string, Source>(SOURCES.map((source) => [source.id, source]));

/** Author and title of a source by its id. */
export function sourceTitle(sourceId: string): string {
  const source = BY_ID.get(sourceId);
  return source ? `${source.author}: ${source.title}` : sourceId;
}

/** A citation as people read it: author, title, year, place in the text, and how far it was at hand. */
export function citationText({ sourceId, locator }: { sourceId: string; locator?: string }): string {
  const source = BY_ID.get(sourceId);
  const basis = source?.basis === "from-memory" ? "from memory" : null;
  return [`${sourceTitle(sourceId)}${source?.year ? ` (${source.year})` : ""}`, locator, basis]
    .filter(Boolean)
    .join(", ");
}
