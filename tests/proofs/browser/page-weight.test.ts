import type { Page, Response } from "playwright-core";
import { describe, expect, it } from "vitest";
import { drivenApp } from "#tests/browser/driven-app.ts";
import { exampleJob, homeownerPage, PATIENCE_MS } from "./demo-pages.ts";

/** Script of a first visit as it comes over the wire, compressed, in kB of a thousand bytes. */
const MOST_JOB_KB = 250;
const MOST_HOMEOWNER_KB = 100;
/** The framework alone is more than that: less would mean that nothing was measured. */
const LEAST_JOB_KB = 100;
/** Long enough that anything which starts by itself has started. */
const IDLE_MS = 3_000;
const STEPS = ["house", "equipment", "ducts", "readings", "leaks", "energy", "plan", "result"] as const;

const driven = drivenApp();

/** A browser that has seen nothing yet, and all script that it fetches, in pages and in workers. */
async function firstVisit(): Promise<{ page: Page; scripts: Response[]; close(): Promise<void> }> {
  const context = await driven.browser.newContext({ viewport: { width: 1280, height: 900 } });
  context.setDefaultTimeout(PATIENCE_MS);
  const page = await context.newPage();
  const scripts: Response[] = [];
  page.on("response", (response) => {
    const type = response.headers()["content-type"] ?? "";
    if (/javascript/.test(type) || new URL(response.url()).pathname.endsWith(".js")) scripts.push(response);
  });
  return { page, scripts, close: () => context.close() };
}

async function kilobytes(scripts: readonly Response[]): Promise<number> {
  const sizes = await Promise.all(scripts.map((response) => response.request().sizes()));
  return sizes.reduce((sum, { responseBodySize }) => sum + Math.max(responseBodySize, 0), 0) / 1000;
}

const jobAddress = async (): Promise<string> => {
  const { page, close } = await firstVisit();
  const address = await exampleJob(page, driven.url);
  await close();
  return address;
};

describe("script of a first visit, compressed", () => {
  it.each(STEPS)(
    `the job page at %s: less than ${MOST_JOB_KB} kB in all until somebody comes to the form`,
    async (step) => {
      const address = await jobAddress();
      const { page, scripts, close } = await firstVisit();
      await page.goto(`${address}/${step}`);
      await page.waitForLoadState("networkidle");
      await page.waitForTimeout(IDLE_MS);
      const kb = await kilobytes(scripts);
      console.log(`${step}: ${kb.toFixed(0)} kB before the first key, ${page.workers().length} workers`);
      expect(page.workers()).toEqual([]);
      expect(kb).toBeGreaterThan(LEAST_JOB_KB);
      expect(kb).toBeLessThan(MOST_JOB_KB);
      await close();
    },
  );

  it("the engine comes with the first key, and how heavy it is", async () => {
    const address = await jobAddress();
    const { page, scripts, close } = await firstVisit();
    await page.goto(`${address}/house`);
    await page.waitForLoadState("networkidle");
    const before = await kilobytes(scripts);
    const worker = page.waitForEvent("worker");
    await page.keyboard.press("Tab");
    await worker;
    await page.waitForLoadState("networkidle");
    await page.waitForTimeout(IDLE_MS);
    const all = await kilobytes(scripts);
    console.log(`house: ${before.toFixed(0)} kB before the first key, ${all.toFixed(0)} kB with the engine`);
    expect(all).toBeGreaterThan(before);
    await close();
  });

  it(`the homeowner's page: less than ${MOST_HOMEOWNER_KB} kB, and none as it stands`, async () => {
    const address = await homeownerPage(driven.browser, driven.url);
    const { page, scripts, close } = await firstVisit();
    await page.goto(address);
    await page.waitForLoadState("networkidle");
    expect(await page.locator("h1").count()).toBe(1);
    const kb = await kilobytes(scripts);
    console.log(`homeowner's page: ${kb.toFixed(0)} kB`);
    expect(kb).toBeLessThan(MOST_HOMEOWNER_KB);
    expect(await page.evaluate(() => document.scripts.length)).toBe(0);
    await close();
  });
});
