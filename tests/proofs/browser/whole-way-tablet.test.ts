import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, it } from "vitest";
import { type AppServer, startApp } from "#tests/browser/app-server.ts";
import { launchChromium } from "#tests/browser/chromium.ts";
import { walkTheWay } from "#tests/browser/walk-the-way.ts";

let app: AppServer;
let browser: Browser;
beforeAll(async () => {
  [app, browser] = await Promise.all([startApp(), launchChromium()]);
});
afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

describe("the whole way at 768 px, by keyboard alone", () => {
  it("from nothing to a proposal that the homeowner opens, with axe, standing still, without a foreign request", () =>
    walkTheWay({ app, browser }, { width: 768, hand: "keyboard", scheme: "dark" }));
});
