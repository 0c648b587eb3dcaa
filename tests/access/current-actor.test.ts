import { describe, expect, test } from "vitest";
import { currentActor } from "#lib/access/current-actor.ts";
import { DEMO_IDENTITIES, DEMO_ORGANIZATIONS } from "#lib/access/demo-identities.ts";
import { isLoopbackHost, isLoopbackOrigin } from "#lib/access/loopback-host.ts";

describe("who acts", () => {
  test("is the demo owner, unless the cookie names another demo identity", () => {
    expect(currentActor()).toBe(DEMO_IDENTITIES.owner);
    expect(currentActor("reviewer")).toBe(DEMO_IDENTITIES.reviewer);
  });

  test.each(["", "somebody", "constructor", "__proto__", "toString", "owner "])(
    "is never taken from a cookie that names nobody: %j",
    (cookie) => {
      expect(currentActor(cookie)).toBe(DEMO_IDENTITIES.owner);
    },
  );
});

describe("the demo identities", () => {
  test("have ids of their own, and stand in the organization they name", () => {
    const people = Object.values(DEMO_IDENTITIES);
    expect(new Set(people.map((person) => person.actorId)).size).toBe(people.length);
    for (const person of people) {
      expect(person.actorId).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-8[0-9a-f]{3}-[0-9a-f]{12}$/);
      expect(Object.values(DEMO_ORGANIZATIONS).map((organization) => organization.id)).toContain(person.organizationId);
    }
  });

  test("are marked as invented", () => {
    for (const { name } of Object.values(DEMO_ORGANIZATIONS)) expect(name).toContain("(invented)");
  });
});

describe("this machine", () => {
  test.each(["localhost", "localhost:3000", "127.0.0.1:3000", "[::1]:3000", "LOCALHOST:80"])("is %s", (host) => {
    expect(isLoopbackHost(host)).toBe(true);
  });

  test.each([
    null,
    "",
    "example.org",
    "localhost.example.org",
    "127.0.0.1.example.org:3000",
    "evil@127.0.0.1",
    "0.0.0.0",
    "192.168.1.2:3000",
  ])("is not %j", (host) => {
    expect(isLoopbackHost(host)).toBe(false);
  });

  test("is where a change must come from, when a browser says from where", () => {
    expect(isLoopbackOrigin(null)).toBe(true);
    expect(isLoopbackOrigin("http://127.0.0.1:3000")).toBe(true);
    expect(isLoopbackOrigin("http://example.org")).toBe(false);
    expect(isLoopbackOrigin("null")).toBe(false);
  });
});
