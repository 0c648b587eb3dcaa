import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { readRunningServer, readServerPid } from "#lib/store/embedded/postmaster-file.ts";
import { isAlive } from "#lib/store/embedded/process-lock.mjs";
import { makeLibraryLinks } from "#lib/store/embedded/server-programs.ts";
import { checkoutId, stateFolder } from "#lib/store/embedded/state-folder.ts";
import { openStore, type Store } from "#lib/store/open-store.ts";
import { buildAppProcess, end, startAppProcess } from "./app-process.ts";
import { ALPHA, addJob, temporaryFolder } from "./temporary-database.ts";

let folder: string;
let env: Record<string, string>;
let open: Store[];
/** The number of a process that was there and is gone: 2^22 is the highest that Linux gives. */
const DEAD_PID = 4_194_303;

beforeAll(buildAppProcess);
beforeEach(() => {
  folder = temporaryFolder();
  env = { DUCTMEND_STATE_FOLDER: folder };
  open = [];
});
afterEach(async () => {
  for (const store of open) await store.close();
  rmSync(folder, { recursive: true, force: true });
});

async function openHere(): Promise<Store> {
  const store = await openStore({ env });
  open.push(store);
  return store;
}

const serverPid = () => readServerPid(join(folder, "data"));

async function addOwner(store: Store): Promise<void> {
  await store.withOrganization(ALPHA, ({ organizations }) =>
    organizations.ensure({ kind: "contractor", name: "Invented", isDemo: true, members: [] }),
  );
}

describe("the embedded server", () => {
  test("is started by the first process, joined by the second, and stopped by the last one out", async () => {
    const first = await openStore({ env });
    const pid = serverPid();
    const { app, word } = await startAppProcess(env);
    expect(word).toBe("open");
    expect(serverPid()).toBe(pid);
    await first.close();
    expect(isAlive(pid!)).toBe(true);
    await end(app, "SIGTERM");
    expect(serverPid()).toBeUndefined();
  });

  test("is one for three starts at once on an empty folder", async () => {
    const apps = await Promise.all([startAppProcess(env), startAppProcess(env), startAppProcess(env)]);
    expect(apps.map(({ word }) => word)).toEqual(["open", "open", "open"]);
    const pid = serverPid();
    expect(pid).toBeDefined();
    await Promise.all(apps.map(({ app }) => end(app, "SIGTERM")));
    expect(serverPid()).toBeUndefined();
  });

  test("starts over a lock that a dead process left behind", async () => {
    writeFileSync(
      join(folder, "start.lock"),
      JSON.stringify({ pid: DEAD_PID, host: (await import("node:os")).hostname() }),
    );
    await openHere();
    expect(serverPid()).toBeDefined();
    expect(existsSync(join(folder, "start.lock"))).toBe(false);
  });

  test("starts over a set-up that was cut short", async () => {
    mkdirSync(join(folder, "data.making"));
    writeFileSync(join(folder, "data.making", "PG_VERSION"), "18");
    await openHere();
    expect(readdirSync(folder)).not.toContain("data.making");
  });

  test("starts over the note of a server that is gone, or whose number another program has now", async () => {
    await (await openStore({ env })).close();
    for (const pid of [DEAD_PID, process.pid]) {
      writeFileSync(
        join(folder, "data/postmaster.pid"),
        `${pid}\n${folder}/data\n1\n5432\n${folder}/socket\n\n0 0\nready\n`,
      );
      expect(readRunningServer(join(folder, "data"))).toBeUndefined();
      const store = await openStore({ env });
      expect(serverPid()).not.toBe(pid);
      await store.close();
    }
  });

  test("killed at work is started again by the next step, and nothing saved is lost", async () => {
    const store = await openHere();
    await addOwner(store);
    const id = await addJob(store, ALPHA);
    const pid = serverPid()!;
    process.kill(pid, "SIGKILL");
    // The dead server's own children notice a moment later; a step that one of them still began is another test's case.
    await new Promise((resolve) => setTimeout(resolve, 500));
    const { job } = await store.withOrganization(ALPHA, ({ jobs }) => jobs.findCurrent(id));
    expect(job.currentRevision).toBe(1);
    expect(serverPid()).not.toBe(pid);
  });

  test("killed in the middle of a step: the step says so, and nothing of it is kept", async () => {
    const store = await openHere();
    await addOwner(store);
    const step = store.withOrganization(ALPHA, async ({ jobs }) => {
      await jobs.create({ title: "Half" });
      process.kill(serverPid()!, "SIGKILL");
      await new Promise((resolve) => setTimeout(resolve, 200));
      await jobs.create({ title: "Other half" });
    });
    await expect(step).rejects.toMatchObject({ code: "database-unreachable" });
    expect((await store.withOrganization(ALPHA, ({ jobs }) => jobs.list())).items).toEqual([]);
  });

  test("left over by an app that was killed is joined, and stopped in order by who comes next", async () => {
    const { app } = await startAppProcess(env);
    const pid = serverPid();
    await end(app, "SIGKILL");
    expect(isAlive(pid!)).toBe(true);
    const store = await openStore({ env });
    expect(serverPid()).toBe(pid);
    await store.close();
    expect(serverPid()).toBeUndefined();
  });

  test("keeps its passwords to its owner and listens on no network", async () => {
    await openHere();
    expect(statSync(join(folder, "passwords.json")).mode & 0o077).toBe(0);
    expect(statSync(join(folder, "data")).mode & 0o077).toBe(0);
    expect(readFileSync(join(folder, "data/postmaster.pid"), "utf8").split("\n")[5]).toBe("");
    expect(statSync(join(folder, "socket")).mode & 0o077).toBe(0);
  });

  test("works where the folder's path is too long for a socket", async () => {
    chmodSync(folder, 0o755);
    env = { DUCTMEND_STATE_FOLDER: join(folder, "a".repeat(60), "b".repeat(60)) };
    await addOwner(await openHere());
  });

  test("where the server's account may not enter the folder (as root): says so", async () => {
    if (process.getuid?.() !== 0) return;
    const opening = openStore({ env: { DUCTMEND_STATE_FOLDER: join(folder, "inside") } });
    await expect(opening).rejects.toMatchObject({
      code: "database-unusable",
      message: expect.stringMatching(/may not enter.*DUCTMEND_STATE_FOLDER/),
    });
  });

  test("where the folder cannot be made: says which, and what to do", async () => {
    const file = join(folder, "file");
    writeFileSync(file, "");
    const opening = openStore({ env: { DUCTMEND_STATE_FOLDER: join(file, "inside") } });
    await expect(opening).rejects.toMatchObject({
      code: "file-unwritable",
      message: expect.stringMatching(/inside.*DUCTMEND_STATE_FOLDER/),
    });
  });

  test("where the folder may not be written: the same words (root may write anywhere but in /sys)", async () => {
    let place = "/sys/ductmend";
    if (process.getuid?.() !== 0) {
      place = join(folder, "closed");
      mkdirSync(place, { mode: 0o500 });
    }
    const opening = openStore({ env: { DUCTMEND_STATE_FOLDER: place } });
    await expect(opening).rejects.toMatchObject({ code: "file-unwritable" });
  });

  test("whose data are damaged does not start, and the words of the server are passed on", async () => {
    await (await openStore({ env })).close();
    rmSync(join(folder, "data/global"), { recursive: true });
    await expect(openStore({ env })).rejects.toMatchObject({
      code: "database-unusable",
      message: expect.stringContaining("global"),
    });
  });
});

describe("where the data live", () => {
  const checkout = process.cwd();

  test("an ordinary user's in the checkout, root's under /var/lib by checkout, or where the setting says", () => {
    expect(stateFolder({ checkout, isRoot: false, env: {} })).toBe(join(checkout, ".ductmend"));
    expect(stateFolder({ checkout, isRoot: true, env: {} })).toBe(`/var/lib/ductmend/${checkoutId(checkout)}`);
    expect(stateFolder({ checkout, isRoot: true, env: { DUCTMEND_STATE_FOLDER: "/elsewhere" } })).toBe("/elsewhere");
  });

  test("another checkout has another place, a link to the same one the same", () => {
    expect(checkoutId(folder)).not.toBe(checkoutId(checkout));
    symlinkSync(checkout, join(folder, "link"));
    expect(checkoutId(join(folder, "link"))).toBe(checkoutId(checkout));
    expect(checkoutId(checkout)).toMatch(/^[0-9a-f]{12}$/);
  });
});

describe("library links that an install script would have made", () => {
  test("are made, relative, and a broken one is replaced", () => {
    mkdirSync(join(folder, "native/lib"), { recursive: true });
    writeFileSync(join(folder, "native/lib/libx.so.1.2"), "library");
    writeFileSync(
      join(folder, "native/pg-symlinks.json"),
      JSON.stringify([
        { source: "native/lib/libx.so.1.2", target: "native/lib/libx.so" },
        { source: "native/lib/libx.so.1.2", target: "native/lib/libx.so.1" },
      ]),
    );
    symlinkSync("gone", join(folder, "native/lib/libx.so.1"));
    makeLibraryLinks(folder);
    makeLibraryLinks(folder);
    for (const name of ["libx.so", "libx.so.1"])
      expect(readFileSync(join(folder, "native/lib", name), "utf8")).toBe("library");
  });
});
