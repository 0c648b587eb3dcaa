import type { Browser, Response } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type AppServer, startApp } from "./app-server.ts";
import { launchChromium } from "./chromium.ts";
import { openPage, type Way, walkTheWay } from "./walk-the-way.ts";

let app: AppServer;
let browser: Browser;

beforeAll(async () => {
  [app, browser] = await Promise.all([startApp(), launchChromium()]);
});
afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

/** Between the two, at 768 px: tests/proofs/browser/whole-way-tablet. */
const WAYS: Way[] = [
  { width: 390, hand: "touch", scheme: "dark" },
  { width: 1280, hand: "keyboard", scheme: "light" },
];

describe.each(WAYS)("the whole way at $width px, by $hand alone", (way) => {
  it(
    "from nothing to a proposal that the homeowner opens, with axe, standing still, without a foreign request",
    {
      timeout: 240_000,
    },
    () => walkTheWay({ app, browser }, way),
  );
});

/** Compressed script of a first visit, in kB; each step and the engine's own weight: tests/proofs/browser/page-weight. */
const MOST_JOB_KB = 250;

it("the job page loads less than 250 kB of script in all, and no engine before somebody comes to the form", async () => {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  const { page } = await openPage(context, app.url);
  await page.goto(`${app.url}/jobs`);
  const job = await page.getByRole("link", { name: /^12 Hartwell Lane/ }).getAttribute("href");
  await context.close();
  const cold = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  const { page: first } = await openPage(cold, app.url);
  const scripts: Response[] = [];
  first.on("response", (response) => {
    if (new URL(response.url()).pathname.endsWith(".js")) scripts.push(response);
  });
  await first.goto(`${app.url}${job}/house`);
  // The ranges are the last to come, from the server.
  await first
    .getByText(/assumed ±/)
    .first()
    .waitFor();
  const sizes = await Promise.all(scripts.map((response) => response.request().sizes()));
  const kilobytes = sizes.reduce((sum, { responseBodySize }) => sum + Math.max(responseBodySize, 0), 0) / 1000;
  expect(first.workers()).toEqual([]);
  // The framework alone is more than that, or nothing would have been measured.
  expect(kilobytes).toBeGreaterThan(100);
  expect(kilobytes).toBeLessThan(MOST_JOB_KB);
  await cold.close();
});
