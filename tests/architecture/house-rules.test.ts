import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { ERROR_TABLE } from "#lib/errors/error-table.ts";
import { METHODS } from "#lib/methods/catalogue.ts";
import { SOURCES } from "#lib/sources/sources.ts";
import { readSources, type SourceFile } from "./import-graph.ts";

const ROOT = new URL("../..", import.meta.url).pathname;
const sources = readSources(ROOT, ["lib", "app"]);
const tests = readSources(ROOT, ["tests"]);
const MOST_LINES = 300;

/** Data tables are exempt from the length of a file: they are rows, not logic. */
const isTable = ({ path }: SourceFile) =>
  /(repairs|leak-kinds|practice-houses|messages\/(en|es)|glossary|sources)\.ts$|lib\/documents\/messages\//.test(path);

function longFiles(files: readonly SourceFile[]): string[] {
  return files
    .filter((file) => !isTable(file) && file.text.split("\n").length > MOST_LINES)
    .map(({ path, text }) => `${path}: ${text.split("\n").length} lines`);
}

function forbiddenNames(files: readonly SourceFile[]): string[] {
  return files
    .map(({ path }) => path)
    .filter((path) => /(^|\/)(utils?|misc|helpers?|common|index)\.(ts|tsx)$/.test(path));
}

/** An ignored lint rule must say why on the same line. */
const LOOPHOLES = [/:\s*any\b/, /\bas any\b/, /@ts-ignore/, /@ts-expect-error/, /@ts-nocheck/];
const SILENT_IGNORE = /biome-ignore [\w/]+:?\s*(\*\/)?\s*$/m;

function loopholes(files: readonly SourceFile[]): string[] {
  return files.flatMap(({ path, text }) => {
    const code = text
      .replace(/\/\*(?!\s*biome-ignore)[\s\S]*?\*\//g, "")
      .replace(/\/\/(?!.*(biome-ignore|@ts-)).*$/gm, "");
    return [...LOOPHOLES, SILENT_IGNORE]
      .filter((loophole) => loophole.test(code))
      .map((loophole) => `${path}: ${loophole.source}`);
  });
}

function unknownSources(files: readonly SourceFile[], known: ReadonlySet<string>): string[] {
  return files.flatMap(({ path, text }) =>
    [...text.matchAll(/sourceId:\s*"([^"]+)"/g)].filter(([, id]) => !known.has(id!)).map(([, id]) => `${path}: ${id}`),
  );
}

function brokenDecisionLinks(files: readonly SourceFile[], decisions: ReadonlySet<string>): string[] {
  return files.flatMap(({ path, text }) =>
    [...text.matchAll(/\bD-\d{2}\b/g)].filter(([id]) => !decisions.has(id)).map(([id]) => `${path}: ${id}`),
  );
}

describe("house rules", () => {
  it("looks at the whole tree", () => {
    expect(sources.length).toBeGreaterThan(300);
    expect(tests.length).toBeGreaterThan(60);
  });

  it(`keeps files within ${MOST_LINES} lines`, () => {
    expect(longFiles(sources)).toEqual([]);
    expect(longFiles([{ path: "lib/x.ts", text: "\n".repeat(MOST_LINES + 1) }])).toHaveLength(1);
  });

  it("has no grab-bag files", () => {
    expect(forbiddenNames(sources)).toEqual([]);
    expect(forbiddenNames([{ path: "lib/x/utils.ts", text: "" }])).toHaveLength(1);
  });

  it("has no loophole in the types", () => {
    expect(loopholes(sources)).toEqual([]);
    expect(loopholes([{ path: "lib/x.ts", text: "const a: any = 1;" }])).toHaveLength(1);
    expect(loopholes([{ path: "lib/x.ts", text: "// biome-ignore lint/style/x\nconst a = 1;" }])).toHaveLength(1);
  });

  it("cites only sources that are listed", () => {
    const known = new Set<string>(SOURCES.map((source) => source.id));
    expect(unknownSources(sources, known)).toEqual([]);
    expect(unknownSources([{ path: "lib/x.ts", text: 'sourceId: "hearsay"' }], known)).toHaveLength(1);
    for (const method of METHODS) expect(method.sources.length, method.id).toBeGreaterThan(0);
  });

  it("resolves each pointer to a decision", () => {
    const text = readFileSync(join(ROOT, "DEVELOPERS.md"), "utf8");
    const decisions = new Set([...text.matchAll(/^### (D-\d{2})\b/gm)].map(([, id]) => id!));
    expect(decisions.size).toBeGreaterThan(5);
    expect(brokenDecisionLinks(sources, decisions)).toEqual([]);
    expect(brokenDecisionLinks([{ path: "lib/x.ts", text: "see D-99" }], decisions)).toHaveLength(1);
  });

  it("maps each error to a status, an exit code and words", () => {
    for (const [code, row] of Object.entries(ERROR_TABLE)) {
      expect(row.status, code).toBeGreaterThanOrEqual(200);
      expect([1, 2, 3], code).toContain(row.exitCode);
      expect(row.title.length, code).toBeGreaterThan(5);
      expect(row.help.length, code).toBeGreaterThan(5);
    }
  });

  it("keeps the fixed layout", () => {
    for (const path of [
      "README.md",
      "DEVELOPERS.md",
      "package.json",
      "tsconfig.json",
      "app",
      "lib",
      "prisma",
      "public",
      "tests",
    ])
      expect(existsSync(join(ROOT, path)), path).toBe(true);
  });
});
