import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer, type Server } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { listeningAddress, refuseTakenPort } from "#lib/cli/launch/loopback.mjs";

let root: string;
let taken: Server;
let port: number;

beforeEach(async () => {
  root = mkdtempSync(join(tmpdir(), "ductmend-address-"));
  taken = createServer();
  await new Promise<void>((resolve) => taken.listen(0, "127.0.0.1", resolve));
  const address = taken.address();
  port = typeof address === "object" && address ? address.port : 0;
});
afterEach(() => {
  taken.close();
  rmSync(root, { recursive: true });
});

const address = (env: Record<string, string | undefined>) => listeningAddress(env);

describe("the address", () => {
  test("is this machine at port 3000, or at the port that is set", () => {
    expect(address({})).toEqual({ host: "127.0.0.1", port: 3000 });
    expect(address({ PORT: "3001" })).toEqual({ host: "127.0.0.1", port: 3001 });
  });

  test.each([
    { HOST: "localhost" },
    { HOST: "127.0.0.1" },
    { HOST: "::1" },
    { HOSTNAME: "laptop" },
    { HOSTNAME: "127.0.0.1" },
  ])("may be repeated by %j, which changes nothing", (env) => {
    expect(address(env).host).toBe("127.0.0.1");
  });

  test.each([
    { HOST: "0.0.0.0" },
    { HOST: "::" },
    { HOST: "example.org" },
    { HOSTNAME: "10.0.0.4" },
    { HOSTNAME: "::" },
  ])("of any other machine is refused: %j", (env) => {
    expect(() => address(env)).toThrow(/is refused/);
  });
});

describe("a port that is taken", () => {
  test("by another program: says so, and the next port to try", async () => {
    await expect(refuseTakenPort(root, { host: "127.0.0.1", port })).rejects.toThrow(
      `Port ${port} is taken by another program. Choose another one: PORT=${port + 1} npm start`,
    );
  });

  test("by Ductmend itself from this folder: says where it is", async () => {
    mkdirSync(join(root, ".build/running"), { recursive: true });
    writeFileSync(join(root, `.build/running/${process.ppid}`), `http://127.0.0.1:${port}`);
    await expect(refuseTakenPort(root, { host: "127.0.0.1", port })).rejects.toThrow(/already runs at http:\/\/127/);
  });

  test("by nobody is free", async () => {
    await new Promise((resolve) => taken.close(resolve));
    await expect(refuseTakenPort(root, { host: "127.0.0.1", port })).resolves.toBeUndefined();
  });
});
