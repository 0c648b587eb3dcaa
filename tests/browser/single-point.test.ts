import type { Locator } from "playwright-core";
import { describe, expect, it } from "vitest";
import { expectClose } from "#tests/expect-close.ts";
import { checkPage } from "./chromium.ts";
import { drivenApp } from "./driven-app.ts";

const MOST_TAPS_AND_FIELDS = 24;

const driven = drivenApp();

/** A hand in a glove: every press and every field filled in is counted. */
function countingHand() {
  let count = 0;
  return {
    count: () => count,
    async tap(target: Locator) {
      count += 1;
      await target.tap();
    },
    async fill(target: Locator, text: string) {
      count += 1;
      await target.fill(text);
    },
    async choose(target: Locator, label: string) {
      count += 1;
      await target.selectOption({ label });
    },
  };
}

describe.each([390, 360])("a single-point test on a phone of %i px", (width) => {
  it("takes fewer than 25 taps and fields from nothing to a saved leakage, and answers what is wrong on the way", {
    timeout: 120_000,
  }, async () => {
    const context = await driven.browser.newContext({
      viewport: { width, height: 780 },
      hasTouch: true,
      isMobile: true,
      colorScheme: width === 390 ? "light" : "dark",
    });
    const page = await context.newPage();
    const hand = countingHand();
    const button = (name: RegExp | string) => page.getByRole("button", { name });

    await page.goto(`${driven.url}/jobs`);
    await hand.tap(page.getByRole("link", { name: "New job" }));
    await hand.fill(page.getByLabel("Name of the house"), `Glove Lane ${width} (invented)`);
    await hand.fill(page.getByLabel("ZIP code"), "53711");
    await hand.tap(button("Start the trip"));
    await page.waitForURL(/\/house$/);
    await hand.tap(page.getByText(/step 1 of 7/));
    await hand.tap(page.getByRole("link", { name: /^Readings/ }).first());
    await page.waitForURL(/\/readings$/);
    await hand.tap(button("Total leakage"));
    await hand.tap(page.getByRole("radio", { name: "Pulling air out" }).first());
    await hand.choose(page.getByLabel("Flow restrictor at step 1"), "Narrow restrictor");
    await hand.fill(page.getByLabel(/^Duct pressure at step 1/), "25");
    await hand.fill(page.getByLabel(/^Fan pressure at step 1/), "650");
    // Two mistakes: the sign of a fan that pulls, and a restrictor that is too small. Each is named with the next move.
    await page.getByText("The pressure reads 25 Pa while the fan is pulling air out.").waitFor();
    await page.getByText(/Change to Middle restrictor; expect about \d+(\.\d)? Pa on the fan/).waitFor();
    await checkPage(page);
    await hand.tap(button(/^Plus or minus: Duct pressure at step 1/));
    await hand.choose(page.getByLabel("Flow restrictor at step 1"), "Middle restrictor");
    await hand.fill(page.getByLabel(/^Fan pressure at step 1/), "120");
    await page.getByText("Nothing about these readings looks wrong.").waitFor();
    await hand.tap(page.getByText("Stage, baselines, temperatures, who and when"));
    await hand.fill(page.getByLabel("Baseline before"), "-0.2");
    await hand.fill(page.getByLabel("Indoor temperature"), "70");
    await hand.fill(page.getByLabel("Tested by"), "Sunniva Holt (invented)");
    const said = page.getByText(/^[\d.,]+ cfm at 25 Pa$/);
    await said.waitFor();
    const cfm25 = Number((await said.textContent())!.replace(/ cfm.*/, ""));
    // The invented fan pulls 19 × .96 × √120 = 199.8 cfm of standard air. At Madison, 860 ft, the standard atmosphere has
    // 0.969 of sea level's pressure, so air of 70 °F weighs 0.0726 lb/ft³: × √(0.075/0.0726) = 203.1. The ducts stood at
    // 24.8 Pa without the baseline: × (25/24.8)^.6 = 204.1.
    expectClose({
      actual: cfm25,
      expected: 204.1,
      relativeTolerance: 0.01,
      reason: "the elevation of the ZIP code and the density are rounded by hand, the screen to three figures",
    });
    await checkPage(page);
    await hand.tap(button(/Continue to leaks/));
    await page.waitForURL(/\/leaks$/);

    expect(hand.count()).toBeLessThanOrEqual(MOST_TAPS_AND_FIELDS);
    await page.goBack();
    await page.waitForURL(/\/readings$/);
    expect(await page.getByLabel(/^Fan pressure at step 1/).inputValue()).toBe("120");
    await context.close();
  });
});

describe("readings beyond one step", () => {
  it("averages a typed series, fits a line with its scatter, and ends the way out of 25 Pa in a marked value", {
    timeout: 120_000,
  }, async () => {
    const context = await driven.browser.newContext({
      viewport: { width: 390, height: 780 },
      hasTouch: true,
      isMobile: true,
    });
    const page = await context.newPage();
    const button = (name: RegExp | string) => page.getByRole("button", { name });
    await page.goto(`${driven.url}/jobs/new`);
    await page.getByLabel("Name of the house").fill("Series Lane (invented)");
    await button("Start the trip").click();
    await page.waitForURL(/\/house$/);
    await page.goto(page.url().replace(/house$/, "readings"));
    await button("Total leakage").click();
    await page.getByLabel("Flow restrictor at step 1").selectOption({ label: "Middle restrictor" });
    await page.getByLabel(/^Fan pressure at step 1/).fill("100");
    await button(/^Average a series for step 1/).click();
    await page.getByLabel("Duct pressures at step 1").fill("24.6 25.4 25.3");
    await page.getByText("3 readings, average 25.1 Pa, from 24.6 to 25.4.").waitFor();
    await button("Use the average").click();
    expect(await page.getByLabel(/^Duct pressure at step 1/).inputValue()).toBe("25.1");

    for (const [step, ductPa, fanPa] of [
      [2, "50", "240"],
      [3, "35", "142"],
    ] as const) {
      await button(/^Next step/).click();
      await page.keyboard.type(ductPa);
      await page.getByLabel(new RegExp(`^Fan pressure at step ${step}`)).fill(fanPa);
    }
    await page
      .getByText(/% (above|below) the line$/)
      .first()
      .waitFor();
    await page.getByRole("heading", { name: "The readings and the line through them" }).waitFor();
    await checkPage(page);

    await button(/^Remove step 3/).click();
    await button(/^Remove step 2/).click();
    await page.getByLabel(/^Duct pressure at step 1/).fill("15");
    await page.getByText("The highest pressure was 15 Pa; the leakage at 25 Pa is extrapolated.").waitFor();
    for (const answer of ["No", "No", "No", "No", "No"]) await button(answer).click();
    await page.getByText("25 Pa is out of reach").first().waitFor();
    await checkPage(page);
    await button("Keep it and mark it doubtful").last().click();
    await page.getByText("Step 1 is kept but marked doubtful.").waitFor();
    await context.close();
  });
});
