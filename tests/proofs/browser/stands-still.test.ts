import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { drivenApp } from "#tests/browser/driven-app.ts";
import { PATIENCE_MS } from "./demo-pages.ts";

/** A tenth of what Web Vitals still call good (0.1). */
const MOST_SHIFT = 0.01;
/** Long enough for the ranges and effects of a late answer. */
const SETTLE_MS = 2_500;
const STEPS = ["house", "equipment", "ducts", "readings", "leaks", "energy", "plan", "result"] as const;

const driven = drivenApp();

interface Shift {
  value: number;
  /** Within half a second of a press or a key, which the browser takes for what was wanted. */
  isAnswer: boolean;
  what: string[];
}

async function openWatched(width: number) {
  const isPhone = width < 500;
  const context = await driven.browser.newContext({
    viewport: { width, height: 900 },
    hasTouch: isPhone,
    isMobile: isPhone,
  });
  context.setDefaultTimeout(PATIENCE_MS);
  await context.addInitScript(() => {
    const seen: unknown[] = [];
    Object.assign(globalThis, { shifts: seen });
    new PerformanceObserver((list) => {
      type Entry = PerformanceEntry & { value: number; hadRecentInput: boolean; sources: { node: Node | null }[] };
      for (const { value, hadRecentInput, sources } of list.getEntries() as Entry[])
        seen.push({
          value,
          isAnswer: hadRecentInput,
          what: sources.map(({ node }) => node?.textContent?.slice(0, 40)),
        });
    }).observe({ type: "layout-shift", buffered: true });
  });
  const page = await context.newPage();
  const taken = () =>
    page.evaluate(() => (globalThis as unknown as { shifts: Shift[] }).shifts.splice(0)) as Promise<Shift[]>;
  return { page, taken, close: () => context.close() };
}

/** Nothing moves, or only so little that nobody sees it; `forgiven` leaves out what a press asked for. */
function expectStill(shifts: readonly Shift[], when: string, { forgiven = false } = {}): void {
  const counted = shifts.filter(({ isAnswer }) => !(forgiven && isAnswer));
  const sum = counted.reduce((total, { value }) => total + value, 0);
  console.log(`${when}: ${sum.toFixed(4)}`);
  expect(sum, `${when}: ${JSON.stringify(counted)}`).toBeLessThanOrEqual(MOST_SHIFT);
}

describe.each([390, 1280])("the trip at %i px stands still", (width) => {
  it("as each step opens, at each key, when a first answer comes late, and after a press has had its effect", async () => {
    const { page, taken, close } = await openWatched(width);
    const settle = () => page.waitForTimeout(SETTLE_MS);
    const type = async (name: RegExp, text: string) => {
      const box = page.getByRole("textbox", { name }).first();
      // Bringing a field into view, and the phone's own zoom, are no shifts of the page.
      await box.click();
      await settle();
      await taken();
      await page.keyboard.type(text, { delay: 40 });
      await settle();
      // Every shift counts here, also those that the browser would forgive after a key.
      expectStill(await taken(), `${width} px, typing at ${name}`);
    };
    const press = async (target: ReturnType<Page["locator"]>, what: string) => {
      await target.click();
      await settle();
      expectStill(await taken(), `${width} px, ${what}`, { forgiven: true });
    };
    const goOn = async (name: RegExp, step: string) => {
      await page.getByRole("button", { name }).click();
      await page.waitForURL(new RegExp(`/${step}$`));
      await settle();
      expectStill(await taken(), `${width} px, ${step} opens`, { forgiven: true });
    };
    await page.goto(`${driven.url}/jobs/new`);
    await page.getByLabel("Name of the house").fill(`Still Lane ${width} (invented)`);
    await page.getByLabel("ZIP code").fill("53711");
    await goOn(/Start the trip/, "house");
    await type(/^Conditioned floor area/, "1,640");
    await goOn(/Continue to equipment/, "equipment");
    await press(page.getByRole("radio", { name: "Gas furnace" }), "furnace chosen");
    // With the output the job can be answered for the first time: what stands in for empty fields comes late.
    await type(/^Heating output/, "64000");
    await press(page.getByRole("radio", { name: "No cooling through these ducts" }), "no cooling chosen");
    await goOn(/Continue to ducts/, "ducts");
    await press(page.getByRole("button", { name: "Add a run" }), "run added");
    await goOn(/Continue to readings/, "readings");
    await press(page.getByRole("button", { name: /Total leakage/ }), "test added");
    await press(page.getByRole("radio", { name: "Flow", exact: true }), "flow chosen");
    await type(/^Duct pressure/, "25.2");
    await type(/^Fan flow/, "290");
    await goOn(/Continue to leaks/, "leaks");
    await press(page.getByRole("button", { name: "Add a leak" }), "leak added");
    await goOn(/Continue to energy/, "energy");
    await goOn(/Continue to the plan/, "plan");
    for (const step of STEPS) {
      await page.goto(page.url().replace(/[a-z]+$/, step));
      await settle();
      expectStill(await taken(), `${width} px, ${step} loads`);
    }
    await close();
  });

  it("would see a shift", async () => {
    const { page, taken, close } = await openWatched(width);
    await page.goto(`${driven.url}/jobs`);
    await page.waitForTimeout(SETTLE_MS);
    await taken();
    await page.evaluate(() =>
      document.querySelector("main")?.insertAdjacentHTML("afterbegin", "<p style=height:9rem>"),
    );
    await page.waitForTimeout(SETTLE_MS);
    expect((await taken()).reduce((sum, { value }) => sum + value, 0)).toBeGreaterThan(MOST_SHIFT);
    await close();
  });
});
