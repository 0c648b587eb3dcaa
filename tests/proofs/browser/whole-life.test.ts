import type { Browser, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { checkPage } from "#tests/browser/chromium.ts";
import { actAs, drivenApp } from "#tests/browser/driven-app.ts";

/** A page that starts the solver and ten thousand draws may take its time on a busy machine. */
const PATIENCE_MS = 120_000;

const driven = drivenApp();

async function open(width: number, more: Parameters<Browser["newContext"]>[0] = {}): Promise<Page> {
  const context = await driven.browser.newContext({ viewport: { width, height: 900 }, ...more });
  context.setDefaultTimeout(PATIENCE_MS);
  return await context.newPage();
}

const has = async (page: Page, words: string): Promise<boolean> =>
  (await page.locator("main").textContent())?.includes(words) ?? false;

/** Takes a claim a step further, with a reason, and waits for the state it is then in. */
async function decide(page: Page, step: string, reason: string, state: string): Promise<void> {
  await page.getByText(step, { exact: true }).click();
  await page.getByLabel("Reason").fill(reason);
  await page.getByRole("button", { name: "Decide" }).click();
  await page.locator("header").getByText(state, { exact: true }).waitFor();
}

describe("the whole life of a job", () => {
  it("goes from the proposal over the homeowner's order, the work and the retest to a claim that is paid", {
    timeout: 15 * 60_000,
  }, async () => {
    // The contractor offers.
    const office = await open(1280);
    await office.goto(`${driven.url}/jobs`);
    await office.getByRole("link", { name: "12 Hartwell Lane", exact: true }).click();
    await office.waitForURL(/\/result$/);
    const job = office.url().replace(/\/result$/, "");
    expect(await office.getByRole("link", { name: "Hand in the claim" }).count()).toBe(0);
    await office.goto(`${job}/proposal`);
    await office.getByRole("button", { name: "Issue the proposal" }).click();
    const link = office.locator('a[href*="/h/"]:not([href*="/pdf"])').first();
    await link.waitFor();
    const address = (await link.getAttribute("href"))!;
    await office.getByRole("button", { name: "I have sent it" }).click();
    await office.getByRole("heading", { name: /^Sent/ }).waitFor();

    // The homeowner orders, on a phone without script.
    const home = await open(390, { javaScriptEnabled: false });
    await home.goto(address);
    await home.getByLabel(/^The essential/).check();
    await home.getByLabel("Type your full name").fill("Ana Invented");
    await home.getByLabel(/I have read this paper/).check();
    await home.getByRole("button", { name: "Accept", exact: true }).click();
    expect(await has(home, "You accepted this paper")).toBe(true);

    // The job takes over what was ordered; the work is done, and tested again.
    await office.reload();
    await office.getByRole("button", { name: "Plan what was ordered" }).click();
    await office.waitForURL(/\/options#chosen$/);
    await office.goto(`${job}/readings`);
    await office.getByRole("button", { name: "Total leakage", exact: true }).click();
    const retest = office.locator("section[aria-label^='Total leakage']").last();
    await retest.getByText("Stage, baselines, temperatures, who and when").click();
    await retest.getByLabel("When in the work").selectOption({ label: "Retest after sealing" });
    const after = office.locator("section[aria-label='Total leakage, retest after sealing']");
    await after.getByLabel(/^Duct pressure at step 1/).fill("25.1");
    await after.getByLabel(/^Fan flow at step 1/).fill("148");
    await after.getByLabel("Date of the test").fill("2026-11-26");
    await after.getByLabel("Tested by").fill("Sunniva Holt (invented)");
    await after.getByText(/^14\d cfm at 25 Pa$/).waitFor();
    await checkPage(office);
    await office.getByRole("button", { name: /Continue to leaks/ }).click();
    await office.waitForURL(/\/leaks$/);

    // The promise becomes a verified result, with its certificate, and a claim.
    await office.goto(`${job}/result`);
    expect(await has(office, "verified by the retest")).toBe(true);
    await office.getByRole("link", { name: "Certificate", exact: true }).click();
    await office.getByRole("heading", { name: /^Your ducts leak \d+ ?% less\.$/ }).waitFor();
    await office.goto(`${job}/result`);
    await office.getByRole("link", { name: "Hand in the claim" }).click();
    await office.waitForURL(/\/claim$/);
    expect(await has(office, "No gauge is named for the test")).toBe(true);
    await checkPage(office);
    await office.getByRole("button", { name: "Hand in the claim" }).click();
    await office.waitForURL(/\/program\/claims\//);
    const claim = office.url();

    // The reviewer recomputes it, asks, is answered, approves and pays.
    const desk = await open(1280, { colorScheme: "dark" });
    await actAs(desk, driven, "Ines Calloway");
    await desk.goto(claim);
    expect(await has(desk, "Every number comes out the same")).toBe(true);
    await desk.getByRole("button", { name: "Recompute in this browser" }).click();
    await desk.getByText("This browser gets every number the same, ranges too.").waitFor();
    await checkPage(desk);
    await decide(desk, "Look at it", "Taking this one.", "Being looked at");
    await decide(desk, "Ask the contractor", "Which gauge was it?", "A question is open");
    await office.goto(claim);
    expect(await has(office, "Which gauge was it?")).toBe(true);
    await office.getByLabel("Comment").fill("The one of the second van.");
    await office.getByRole("button", { name: "Add the comment" }).click();
    await office.getByText("The one of the second van.").waitFor();
    await desk.reload();
    expect(await has(desk, "The one of the second van.")).toBe(true);
    await decide(desk, "Look at it", "Answered.", "Being looked at");
    await decide(desk, "Approve", "All there.", "Approved");
    await decide(desk, "Mark as paid", "With the November run.", "Paid");
    await checkPage(desk);

    // The job's record holds each of these acts, in their order.
    await office.goto(`${job}/result`);
    await office.getByRole("link", { name: "Claim: paid" }).waitFor();
    await office.goto(`${job}/history`);
    const record = (await office.locator("section[aria-labelledby=record]").textContent())!;
    const order = [
      "Decided, claim",
      "Comment added, claim",
      "Handed in, claim",
      "Entries saved, revision",
      "Proposal accepted",
      "Proposal opened",
      "Proposal sent",
      "Proposal issued",
    ].map((act) => record.indexOf(act));
    expect(order.every((at) => at >= 0)).toBe(true);
    expect([...order].sort((one, other) => one - other)).toEqual(order);
    await checkPage(office);
    for (const page of [office, home, desk]) await page.context().close();
  });
});
