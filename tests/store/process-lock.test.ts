import { mkdtempSync, readFileSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { hostname, tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { withProcessLock } from "#lib/store/embedded/process-lock.mjs";

let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "ductmend-lock-"));
  file = join(folder, "a.lock");
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

test("one at a time: eight that read, wait and write lose no count", async () => {
  const counter = join(folder, "counter");
  writeFileSync(counter, "0");
  const add = () =>
    withProcessLock({ file, timeoutMs: 30_000 }, async () => {
      const before = Number(readFileSync(counter, "utf8"));
      await pause(5);
      writeFileSync(counter, String(before + 1));
    });
  await Promise.all(Array.from({ length: 8 }, add));
  expect(readFileSync(counter, "utf8")).toBe("8");
});

test("is let go when the work fails", async () => {
  const fail = withProcessLock({ file, timeoutMs: 1000 }, () => Promise.reject(new Error("planted")));
  await expect(fail).rejects.toThrow("planted");
  await expect(withProcessLock({ file, timeoutMs: 0 }, async () => "free")).resolves.toBe("free");
});

test("of a live process is waited for, then given up with the file's name and what to do", async () => {
  writeFileSync(file, JSON.stringify({ pid: process.pid, host: hostname() }));
  const told: number[] = [];
  const waiting = withProcessLock({ file, timeoutMs: 150, onWait: (holder) => told.push(holder) }, async () => "never");
  await expect(waiting).rejects.toThrow(new RegExp(`${process.pid}.*${file}.*remove that file`));
  expect(told).toEqual([process.pid]);
});

test.each([
  ["a dead process", { pid: 4_194_303, host: hostname() }, 0],
  ["a process silent for long, whose number is in use again", { pid: process.pid, host: hostname() }, 600],
  ["another machine, silent for long", { pid: 1, host: "elsewhere" }, 600],
])("of %s is taken over", async (_whose, holder, silentS) => {
  writeFileSync(file, JSON.stringify(holder));
  const then = Date.now() / 1000 - silentS;
  utimesSync(file, then, then);
  await expect(withProcessLock({ file, timeoutMs: 1000 }, async () => "mine")).resolves.toBe("mine");
});

test("of another machine that shows signs of life is not taken over", async () => {
  writeFileSync(file, JSON.stringify({ pid: 4_194_303, host: "elsewhere" }));
  await expect(withProcessLock({ file, timeoutMs: 150 }, async () => "never")).rejects.toThrow(/too long/);
});
