import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { checkPage } from "./chromium.ts";
import { actAs, drivenApp } from "./driven-app.ts";

const driven = drivenApp();

const has = async (page: Page, words: string): Promise<boolean> =>
  (await page.locator("main").textContent())?.includes(words) ?? false;

describe("a claim between contractor and program", () => {
  it("is recomputed, asked about, answered, decided and inspected, each side seeing what is theirs", {
    timeout: 120_000,
  }, async () => {
    const context = await driven.browser.newContext({ viewport: { width: 1280, height: 900 }, colorScheme: "light" });
    const page = await context.newPage();

    await page.goto(`${driven.url}/who`);
    await checkPage(page);
    await actAs(page, driven, "Ines Calloway");
    await checkPage(page);
    await page.getByRole("link", { name: /^quarry-road-retest/ }).click();
    await page.waitForURL(/\/program\/claims\//);
    const address = page.url();
    expect(await has(page, "Every number comes out the same")).toBe(true);
    expect(await has(page, "No photo shows the repair of")).toBe(true);
    // Made on the server, recomputed with all its draws by the worker that the browser got.
    await page.getByRole("button", { name: "Recompute in this browser" }).click();
    await page.getByText("This browser gets every number the same, ranges too.").waitFor();
    await checkPage(page);
    // Nothing on the page lets a reviewer change what was claimed.
    const fields = await page
      .locator("main form [name]")
      .evaluateAll((all) => all.map((each) => each.getAttribute("name")));
    expect([...new Set(fields)].sort()).toEqual(
      ["from", "id", "inspectedCfm25", "note", "reason", "text", "to", "uncertaintyPercent"].sort(),
    );

    await page.getByText("Look at it", { exact: true }).click();
    await page.getByLabel("Reason").fill("Taking this one.");
    await page.getByRole("button", { name: "Decide" }).click();
    await page.getByText("Being looked at").first().waitFor();
    await page.getByText("Ask the contractor").click();
    await page.getByLabel("Reason").fill("Please tell where the photos are.");
    await page.getByRole("button", { name: "Decide" }).click();
    await page.getByText("A question is open").first().waitFor();
    // 137 against the 129.1 claimed: within what two people differ by.
    await page.getByText("Record a reading at the house").click();
    await page.getByLabel(/Total leakage read/).fill("137");
    await page.getByRole("button", { name: "Record the reading" }).click();
    await page.getByText("The two readings agree").waitFor();

    await actAs(page, driven, "Joel Abara");
    await page.goto(address);
    expect(await has(page, "Please tell where the photos are.")).toBe(true);
    expect(await page.getByText("Approve", { exact: true }).count()).toBe(0);
    await page.getByLabel("Comment").fill("On the tablet of the crew.");
    await page.getByRole("button", { name: "Add the comment" }).click();
    await page.getByText("On the tablet of the crew.").waitFor();
    await checkPage(page);

    await actAs(page, driven, "Casper Dunmore");
    const foreign = await page.goto(address);
    expect(foreign?.status()).toBe(404);

    await actAs(page, driven, "Ines Calloway");
    await page.goto(`${driven.url}/program/inspections`);
    await page.getByRole("button", { name: "Draw a sample" }).click();
    await page.getByText("1 of 1 claims").waitFor();
    await checkPage(page);
    // Jobs are the contractor's: the reviewer is sent to choose who acts.
    await page.goto(`${driven.url}/jobs`);
    expect(page.url()).toContain("/who");
    await context.close();
  });

  it("stands with its job: a state of the entries is handed in once, and the record says by whom", {
    timeout: 60_000,
  }, async () => {
    const context = await driven.browser.newContext({ viewport: { width: 390, height: 844 }, colorScheme: "dark" });
    const page = await context.newPage();
    await page.goto(`${driven.url}/jobs`);
    await page.getByRole("link", { name: /Result of 408 Quarry Road, after the work/ }).click();
    // The claim of these entries is handed in: its state stands in place of the button, and so on its page.
    const state = page.getByRole("link", { name: /^Claim: / });
    await state.waitFor();
    expect(await page.getByRole("link", { name: "Hand in the claim" }).count()).toBe(0);
    await page.goto(`${page.url().replace(/\/result$/, "")}/claim`);
    await page.getByText(/^These entries are handed in/).waitFor();
    expect(await page.getByRole("button", { name: "Hand in the claim" }).count()).toBe(0);
    await checkPage(page);
    await page.goto(`${page.url().replace(/\/claim$/, "")}/history`);
    expect(await has(page, "Handed in, claim quarry-road-retest-1")).toBe(true);
    await checkPage(page);
    await context.close();
  });
});
