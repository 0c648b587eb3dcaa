import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { METHODS } from "#lib/methods/catalogue.ts";
import { EXAMPLE_FILES } from "#tests/estimate/example-jobs.ts";

const folder = mkdtempSync(join(tmpdir(), "ductmend-cli-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The bundled command line, as `npm run ductmend` runs it; the user stands in `cwd`. */
function ductmend(args: readonly string[], { input = "", cwd = process.cwd() } = {}) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [".build/cli/ductmend.mjs", ...args], {
    input,
    encoding: "utf8",
    maxBuffer: 1 << 26,
    env: { ...process.env, INIT_CWD: cwd },
  });
  return { status, stdout, stderr };
}

const problemOf = (stderr: string) =>
  JSON.parse(stderr) as { type: string; errors: { pointer: string; fix: string }[] };

describe("estimate", () => {
  it.each(EXAMPLE_FILES)("%s: twice the same bytes, data only on standard output", (file) => {
    const args = ["estimate", `lib/examples/${file}`, "--draws", "200", "--seed", "5"];
    const once = ductmend(args);
    const again = ductmend(args);
    expect(once.status).toBe(0);
    expect(once.stderr).toBe("");
    expect(again.stdout).toBe(once.stdout);
    expect(JSON.parse(once.stdout)).toMatchObject({ schemaVersion: "ductmend.result/1", draws: 200, seed: 5 });
  });

  it("gives values alone without draws, and another seed other ranges but the same values", () => {
    const file = "lib/examples/cold-attic-furnace.json";
    const plain = JSON.parse(ductmend(["estimate", file, "--draws", "0"]).stdout);
    expect(Object.keys(plain.leakage.totalCfm25)).toEqual(["value"]);
    const [one, other] = ["1", "2"].map((seed) =>
      JSON.parse(ductmend(["estimate", file, "--draws", "100", "--seed", seed]).stdout),
    );
    expect(one.savings.costUsdPerYear.value).toBe(other.savings.costUsdPerYear.value);
    expect(one.savings.costUsdPerYear.p10).not.toBe(other.savings.costUsdPerYear.p10);
    expect(one.savings.costUsdPerYear.value).toBe(plain.savings.costUsdPerYear.value);
  });

  it("writes the documents that apply into a folder of the user's, and names them on standard error", () => {
    const job = join(process.cwd(), "lib/examples/mixed-crawlspace-retest.json");
    const { status, stderr } = ductmend(["estimate", job, "--draws", "50", "--documents", "out"], { cwd: folder });
    expect(status).toBe(0);
    const written = readdirSync(join(folder, "out")).sort();
    expect(written).toHaveLength(4);
    for (const name of written) {
      expect(stderr).toContain(name);
      expect(
        readFileSync(join(folder, "out", name))
          .subarray(0, 5)
          .toString(),
      ).toBe("%PDF-");
    }
  });

  it("takes bills and daily temperatures from files, says what it read, and names the line of a fault", () => {
    const days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    const two = (value: number) => String(value).padStart(2, "0");
    const bills = days.map((each, k) => `2025-${two(k + 1)}-01,2025-${two(k + 1)}-${each},${700 + 40 * k},kWh`);
    const warmth = days.flatMap((each, k) =>
      Array.from({ length: each }, (_, day) => `2025-${two(k + 1)}-${two(day + 1)},${30 + 4 * k}`),
    );
    writeFileSync(join(folder, "bills.csv"), ["start,end,amount,unit", ...bills].join("\n"));
    writeFileSync(join(folder, "daily.csv"), ["date,meanF", ...warmth].join("\n"));
    const job = join(process.cwd(), "lib/examples/cold-attic-furnace.json");
    const args = ["estimate", job, "--draws", "0", "--bills", "bills.csv", "--temperatures"];
    const { status, stdout, stderr } = ductmend([...args, "daily.csv"], { cwd: folder });
    expect(status).toBe(0);
    expect(stderr).toContain("12 bills read.");
    expect(stderr).toContain("12 of 12 bills tell now how warm their days were.");
    expect(JSON.parse(stdout).loads.bills).toMatchObject([{ fuel: "electricity", periodsCount: 12 }]);
    const broken = ductmend([...args, "bills.csv"], { cwd: folder });
    expect(broken.status).toBe(2);
    // What was read before stands above the problem.
    const problem = broken.stderr.slice(broken.stderr.indexOf("{"));
    expect(problemOf(problem).errors[0]!.fix).toContain("unit is in the name");
  });

  it("reads the job from standard input, and says in plain words what is wrong with it", () => {
    const { status, stdout, stderr } = ductmend(["estimate", "-"], {
      input: '{"schemaVersion":"ductmend.job/1","house":{"zip":"1"}}',
    });
    expect(status).toBe(2);
    expect(stdout).toBe("");
    const { errors } = problemOf(stderr);
    expect(errors.map(({ pointer }) => pointer)).toContain("#/house/zip");
    for (const { fix } of errors) expect(fix.length).toBeGreaterThan(5);
  });

  it.each([
    [["estimate"], "names no file"],
    [["estimate", "nowhere.json"], "names a file that is not there"],
    [["estimate", "lib/examples/cold-attic-furnace.json", "--draws", "many"], "asks for draws that are no number"],
    [["estimat", "x.json"], "misspells the command"],
    [["estimate", "lib/examples/cold-attic-furnace.json", "--nonsense"], "gives an unknown option"],
  ])("ends with 2 when one %j (%s)", (args) => {
    const { status, stdout, stderr } = ductmend(args as string[]);
    expect(status).toBe(2);
    expect(stdout).toBe("");
    expect(problemOf(stderr).type).toMatch(/^\/problems\//);
  });

  it("ends with 3 when the documents cannot be written", () => {
    const file = join(folder, "a-file");
    writeFileSync(file, "");
    const { status, stderr } = ductmend([
      "estimate",
      "lib/examples/inside-ducts-furnace.json",
      "--draws",
      "0",
      "--documents",
      join(file, "out"),
    ]);
    expect(status).toBe(3);
    expect(problemOf(stderr).type).toBe("/problems/file-unwritable");
  });

  it("speaks to people with --human", () => {
    const { stdout } = ductmend(["estimate", "lib/examples/inside-ducts-furnace.json", "--draws", "100", "--human"]);
    expect(stdout).toMatch(/Verdict: not worth sealing/);
    expect(stdout).toMatch(/Assumed: /);
    expect(stdout, "a figure with more digits than anybody can know").not.toMatch(/\d\.\d{5}/);
  });
});

describe("calc", () => {
  it("lists every method with title and source", () => {
    const listed = JSON.parse(ductmend(["calc", "--list"]).stdout) as {
      id: string;
      title: string;
      source: unknown[];
    }[];
    expect(listed.map(({ id }) => id)).toEqual(METHODS.map(({ id }) => id));
    for (const { title, source } of listed) {
      expect(title.length).toBeGreaterThan(3);
      expect(source.length).toBeGreaterThan(0);
    }
  });

  it("takes one input a line and puts a problem on the line that has one, ending with 2", () => {
    const { status, stdout } = ductmend(["calc", "air-density", "--ndjson"], {
      input: '{"temperatureF":68}\n{"temperatureF":"hot"}\n{"temperatureF":32}\n',
    });
    expect(status).toBe(2);
    const [first, second, third] = stdout
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line));
    expect(first.densityLbPerFt3).toBeGreaterThan(0.07);
    expect(second.errors[0].pointer).toBe("#/temperatureF");
    expect(third.densityLbPerFt3).toBeGreaterThan(first.densityLbPerFt3);
  });

  it("refuses an unknown method and names the nearest", () => {
    const { status, stderr } = ductmend(["calc", "air-densty"], { input: "{}" });
    expect(status).toBe(2);
    expect(stderr).toContain("air-density");
  });
});

describe("schema, claim and recompute", () => {
  it.each(["job", "result", "claim"])("prints the JSON Schema of a %s", (name) => {
    const schema = JSON.parse(ductmend(["schema", name]).stdout) as { $schema: string };
    expect(schema.$schema).toContain("2020-12");
  });

  it("makes a claim that recomputes in another process, and finds the changed one in a batch", () => {
    const claim = ductmend(["claim", "lib/examples/mixed-crawlspace-retest.json", "--draws", "100"]).stdout;
    const file = join(folder, "claim.json");
    writeFileSync(file, claim);
    const alone = ductmend(["recompute", file]);
    expect(alone.status).toBe(0);
    // To the last bit: what one process claimed with its draws, another one gets.
    expect(JSON.parse(alone.stdout)).toMatchObject({ outcome: "same", largestRelativeDifference: 0 });
    const batch = join(folder, "claims.ndjson");
    writeFileSync(batch, `${claim.trim()}\n${claim.trim().replace('"seed":1', '"seed":2')}\n`);
    const many = ductmend(["recompute", "--batch", batch]);
    expect(many.status).toBe(1);
    const lines = many.stdout
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line));
    expect(lines.at(-1)).toMatchObject({ same: 1, differs: 0, invalid: 1 });
    expect(lines[0]).toMatchObject({ line: 2, outcome: "invalid" });
  });
});

describe("convert", () => {
  it("writes HPXML, reads it back as a job, and says on standard error what could not be read", () => {
    const out = ductmend(["convert", "lib/examples/mixed-crawlspace-retest.json", "--from", "job", "--to", "hpxml"]);
    expect(out.status).toBe(0);
    const back = ductmend(["convert", "-", "--from", "hpxml", "--to", "job"], { input: out.stdout });
    expect(back.status).toBe(0);
    expect(JSON.parse(back.stdout)).toMatchObject({ schemaVersion: "ductmend.job/1", id: "quarry-road-retest" });
    expect(back.stderr).toMatch(/not read/);
  });

  it.each([
    [["--from", "hpxml"], "says no target"],
    [["--from", "job", "--to", "job"], "goes nowhere"],
    [["--from", "hpxml", "--to", "job"], "hands in a job as HPXML"],
  ])("ends with 2 when one %j (%s)", (args) => {
    const { status, stdout } = ductmend(["convert", "lib/examples/cold-attic-furnace.json", ...(args as string[])]);
    expect(status).toBe(2);
    expect(stdout).toBe("");
  });
});
