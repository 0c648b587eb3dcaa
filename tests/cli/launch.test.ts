import { existsSync, mkdirSync, readFileSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { hostname } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { SmallClone } from "./launch-clone.ts";

let clone: SmallClone;
beforeEach(() => {
  clone = new SmallClone();
});
afterEach(() => rmSync(clone.root, { recursive: true, force: true }));

const FROM_NOTHING = ["npm ci --include=dev development", "generate", "bundle"];

describe("the launcher, from a clean clone", () => {
  test("installs, generates and bundles once, whatever NODE_ENV says, and then runs", async () => {
    const first = await clone.run(["ductmend", "calc", "--list"], { NODE_ENV: "production" });
    expect(first).toMatchObject({ exitCode: 0 });
    expect(JSON.parse(first.stdout).args).toEqual(["calc", "--list"]);
    expect(clone.calls()).toEqual(FROM_NOTHING);
    await clone.run(["ductmend"]);
    expect(clone.calls()).toEqual(FROM_NOTHING);
  });

  test("keeps standard output for the command: the preparation speaks on the other one", async () => {
    const { stdout, stderr } = await clone.run(["ductmend"]);
    expect(() => JSON.parse(stdout)).not.toThrow();
    expect(stderr).toContain("npm speaks");
    expect(stderr).toContain("prisma speaks");
  });

  test("of two starts at once one prepares, and the other waits and says so", async () => {
    // An installation takes its time, so that the others meet it.
    const slow = { SLOW_MS: "2500" };
    const runs = await Promise.all([1, 2, 3].map(() => clone.run(["ductmend"], slow)));
    expect(runs.map((run) => run.exitCode)).toEqual([0, 0, 0]);
    expect(clone.calls()).toEqual(FROM_NOTHING);
    expect(runs.filter((run) => /preparing Ductmend; waiting/.test(run.stderr)).length).toBeGreaterThan(0);
  });

  test("takes over the lock of a process that died while it prepared", async () => {
    mkdirSync(join(clone.root, ".build"));
    writeFileSync(join(clone.root, ".build/prepare.lock"), JSON.stringify({ pid: 4_194_303, host: hostname() }));
    expect(await clone.run(["ductmend"])).toMatchObject({ exitCode: 0 });
    expect(existsSync(join(clone.root, ".build/prepare.lock"))).toBe(false);
  });

  test("hands on the exit code, where the user stands, and where the program stands", async () => {
    const elsewhere = join(clone.root, "elsewhere");
    mkdirSync(elsewhere);
    const { stdout, exitCode } = await clone.run(["ductmend"], { EXIT: "2" }, elsewhere);
    expect(exitCode).toBe(2);
    expect(JSON.parse(stdout)).toMatchObject({ here: realpathSync(clone.root), user: realpathSync(elsewhere) });
    const named = await clone.run(["ductmend"], { INIT_CWD: "/given/by/npm" });
    expect(JSON.parse(named.stdout).user).toBe("/given/by/npm");
  });
});

describe("the launcher, after a change", () => {
  beforeEach(async () => {
    await clone.run(["ductmend"]);
    rmSync(join(clone.root, "calls.txt"));
  });

  test.each([
    ["a source: bundles again", "lib/cli/ductmend.ts", "// second", ["bundle"]],
    ["the schema: generates and bundles again", "prisma/schema.prisma", "// second", ["generate", "bundle"]],
  ])("of %s", async (_what, path, content, calls) => {
    clone.write(path, content);
    await clone.run(["ductmend"]);
    expect(clone.calls()).toEqual(calls);
  });

  test("of the locked packages: installs again", async () => {
    const packages = { "": {}, "node_modules/prisma": { version: "2.0.0" } };
    clone.write("package-lock.json", JSON.stringify({ packages }));
    await clone.run(["ductmend"]);
    expect(clone.calls()[0]).toBe(FROM_NOTHING[0]);
  });

  test("of the locked packages that somebody installed already: does not install twice", async () => {
    const packages = { "": {}, "node_modules/prisma": { version: "2.0.0" } };
    clone.write("package-lock.json", JSON.stringify({ packages }));
    clone.write("node_modules/.package-lock.json", JSON.stringify({ packages }));
    await clone.run(["ductmend"]);
    expect(clone.calls()).not.toContain(FROM_NOTHING[0]);
  });

  test("of nothing but the time of a file: does nothing", async () => {
    clone.write("lib/cli/ductmend.ts", readFileSync(join(clone.root, "lib/cli/ductmend.ts"), "utf8"));
    await clone.run(["ductmend"]);
    expect(clone.calls()).toEqual([]);
  });
});

describe("the launcher, asked for what it cannot do", () => {
  test.each([
    [[], {}, 2, /Use one of: start/],
    [["constructor"], {}, 2, /Use one of: start/],
    [["start"], { HOST: "0.0.0.0" }, 3, /HOST=0\.0\.0\.0 is refused.*this machine only/],
    [["start"], { HOSTNAME: "192.168.1.4" }, 3, /HOSTNAME=192\.168\.1\.4 is refused/],
    [["start"], { PORT: "many" }, 2, /PORT must be a whole number/],
    [["start"], { PORT: "70000" }, 2, /PORT must be a whole number/],
  ])("%j with %j ends with %i and says why, before it prepares anything", async (args, env, exitCode, words) => {
    const run = await clone.run(args as string[], env as Record<string, string>);
    expect(run).toMatchObject({ exitCode, stdout: "", stderr: expect.stringMatching(words) });
    expect(clone.calls()).toEqual([]);
  });

  test("a step that fails stops it with the step's own words, and the next start tries again", async () => {
    await clone.run(["ductmend"]);
    clone.write("prisma/schema.prisma", "// changed");
    clone.write("node_modules/prisma/build/index.js", 'console.log("planted trouble"); process.exitCode = 1;');
    const run = await clone.run(["ductmend"]);
    expect(run).toMatchObject({ exitCode: 3, stdout: "" });
    expect(run.stderr).toMatch(/planted trouble[\s\S]*Making the database client failed \(exit 1\)/);
    clone.write("node_modules/prisma/build/index.js", "");
    expect(await clone.run(["ductmend"])).toMatchObject({ exitCode: 0 });
  });
});
