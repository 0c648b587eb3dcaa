import { expect, test } from "vitest";
import { citationText } from "#lib/sources/source-title.ts";
import { SOURCES } from "#lib/sources/sources.ts";

test("a citation says once, and only where it is so, that it comes from memory", () => {
  for (const { id, basis } of SOURCES) {
    const count = citationText({ sourceId: id }).split("from memory").length - 1;
    expect(count, id).toBe(basis === "from-memory" ? 1 : 0);
  }
  expect(citationText({ sourceId: "practice" })).toBe("Common trade practice, from memory");
  expect(citationText({ sourceId: "iecc", locator: "R403.3, from memory" }).match(/from memory/g)).toHaveLength(1);
});
