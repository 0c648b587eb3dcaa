import { SOURCES } from "#lib/sources/sources.ts";

const TITLES = new Map(SOURCES.map((source) => [source.id, `${source.author}: ${source.title}`]));

/** Author and title of a source by its id. */
export function sourceTitle(sourceId: string): string {
  return TITLES.get(sourceId) ?? sourceId;
}
