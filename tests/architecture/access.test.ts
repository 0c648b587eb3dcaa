import { describe, expect, it } from "vitest";
import { readSources, type SourceFile } from "./import-graph.ts";

const ROOT = new URL("../..", import.meta.url).pathname;
const app = readSources(ROOT, ["app"]);
const work = readSources(ROOT, ["lib/work"]);

/** The only places of the screens that open an organization's data; each asks `lib/access` first. */
const DOORS = ["app/jobs/session.ts", "app/h/proposal-by-link.ts"];
/** Files that get the store itself only to hand it, with who acts, to a function of lib/work or lib/access. */
const usesStore = ({ text }: SourceFile) => /\bsharedStore\(\)/.test(text);

/** A screen that opens data by itself, past the doors. */
function bypasses(files: readonly SourceFile[]): string[] {
  return files
    .filter(({ path }) => !DOORS.includes(path))
    .filter(
      (file) =>
        /\.withOrganization\(/.test(file.text) ||
        /from "#lib\/store\/(open-store|unit-of-work|connect|scope)\.ts"/.test(
          file.text.replaceAll(/import type [^;]+;/g, ""),
        ) ||
        (usesStore(file) && !/from "#lib\/(work|access)\//.test(file.text)),
    )
    .map(({ path }) => path);
}

/** Work that takes whoever acts without asking whether they may. */
function unasked(files: readonly SourceFile[]): string[] {
  return files
    .filter(({ text }) => /export async function \w+\(\s*store: Store,\s*actor: MemberActor/.test(text))
    .filter(({ text }) => !/\brequireAllowed\(/.test(text))
    .map(({ path }) => path);
}

const planted = (path: string, text: string): SourceFile => ({ ...app[0]!, path, text });

describe("who may do what is decided by lib/access", () => {
  it("looks at all screens and at the work behind them", () => {
    expect(app.length).toBeGreaterThan(150);
    expect(app.filter(usesStore).length).toBeGreaterThan(3);
    expect(app.filter(({ path }) => DOORS.includes(path))).toHaveLength(DOORS.length);
    for (const door of app.filter(({ path }) => DOORS.includes(path)))
      expect(door.text, door.path).toMatch(/requireAllowed\(|\bcan\(/);
  });

  it("no page goes past it", () => {
    expect(bypasses(app)).toEqual([]);
    expect(bypasses([planted("app/x.ts", "(await sharedStore()).withOrganization(me, read)")])).toEqual(["app/x.ts"]);
    expect(bypasses([planted("app/y.ts", "const s = await sharedStore(); s.resolveApiKey(k)")])).toEqual(["app/y.ts"]);
    expect(bypasses([planted("app/z.ts", 'import { openStore } from "#lib/store/open-store.ts";')])).toEqual([
      "app/z.ts",
    ]);
  });

  it("work done for somebody asks whether they may", () => {
    expect(work.filter(({ text }) => /actor: MemberActor/.test(text)).length).toBeGreaterThan(4);
    expect(unasked(work)).toEqual([]);
    const careless = "export async function wipe(store: Store, actor: MemberActor) { await store.wipe(); }";
    expect(unasked([planted("lib/work/x.ts", careless)])).toEqual(["lib/work/x.ts"]);
  });
});
