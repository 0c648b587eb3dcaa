import type { Response } from "playwright-core";
import { describe, expect, it } from "vitest";
import { drivenApp } from "./driven-app.ts";
import { openPage, type Way, walkTheWay } from "./walk-the-way.ts";

const driven = drivenApp();

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
    () => walkTheWay(driven, way),
  );
});

/** Compressed script of a first visit, in kB; each step and the engine's own weight: tests/proofs/browser/page-weight. */
const MOST_JOB_KB = 250;

it("the job page loads less than 250 kB of script in all, and no engine before somebody comes to the form", async () => {
  const context = await driven.browser.newContext({ viewport: { width: 1280, height: 900 } });
  const { page } = await openPage(context, driven.url);
  await page.goto(`${driven.url}/jobs`);
  const job = await page.getByRole("link", { name: /^12 Hartwell Lane/ }).getAttribute("href");
  await context.close();
  const cold = await driven.browser.newContext({ viewport: { width: 1280, height: 900 } });
  const { page: first } = await openPage(cold, driven.url);
  const scripts: Response[] = [];
  first.on("response", (response) => {
    if (new URL(response.url()).pathname.endsWith(".js")) scripts.push(response);
  });
  await first.goto(`${driven.url}${job}/house`);
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
