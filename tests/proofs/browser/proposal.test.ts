import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { checkPage } from "#tests/browser/chromium.ts";
import { drivenApp } from "#tests/browser/driven-app.ts";
import { PATIENCE_MS } from "./demo-pages.ts";

const WIDTH = 390;
/** What a homeowner's phone has to fetch: no script at all, and the whole paper in less than a photo. */
const MOST_PAGE_BYTES = 250_000;
/** On a phone, with its detail folded; 16,755 before it was. */
const MOST_PAGE_HEIGHT_PX = 8_300;

const driven = drivenApp();

const desk = async (): Promise<BrowserContext> => {
  const context = await driven.browser.newContext({ viewport: { width: 1280, height: 900 } });
  context.setDefaultTimeout(PATIENCE_MS);
  return context;
};
const phone = async (more: Parameters<Browser["newContext"]>[0] = {}): Promise<BrowserContext> => {
  const context = await driven.browser.newContext({ viewport: { width: WIDTH, height: 844 }, ...more });
  context.setDefaultTimeout(PATIENCE_MS);
  return context;
};

async function openExample(page: Page, name: string): Promise<string> {
  await page.goto(`${driven.url}/jobs`);
  await page.getByRole("link", { name, exact: true }).click();
  await page.waitForURL(/\/result$/);
  return page.url().replace(/\/result$/, "");
}

/** Issues a paper and gives its link, which is another than the earlier one. */
async function issue(page: Page, button: RegExp, earlier = ""): Promise<string> {
  await page.getByRole("button", { name: button }).click();
  const link = page.locator(`a[href*="/h/"]:not([href*="/pdf"]):not([href="${earlier}"])`).first();
  await link.waitFor();
  return (await link.getAttribute("href"))!;
}

function textOfPdf(bytes: Buffer): string {
  const folder = mkdtempSync(join(tmpdir(), "ductmend-pdf-"));
  const file = join(folder, "paper.pdf");
  writeFileSync(file, bytes);
  const text = execFileSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });
  rmSync(folder, { recursive: true });
  return text;
}

const has = async (page: Page, words: string): Promise<boolean> =>
  (await page.locator("main").textContent())?.includes(words) ?? false;

describe("from the choice of the work to the order", () => {
  it("a scope is picked from the drawing, by its goal, and is what the proposal advises", {
    timeout: 240_000,
  }, async () => {
    const context = await desk();
    const page = await context.newPage();
    const job = await openExample(page, "27 Finch Street");
    await page.goto(`${job}/options`);
    await checkPage(page);
    // Hours are asked for with their goal, and what was typed comes back with the problem.
    await page.getByText("Seal the most in the hours there are").click();
    await page.getByLabel(/^Budget/).fill("5000");
    await page.getByRole("button", { name: "Find the options" }).click();
    await page.getByText("Enter the hours, above 0 and up to 400").waitFor();
    expect(await page.getByLabel(/^Budget/).inputValue()).toBe("5000");
    await checkPage(page);
    await page.getByLabel(/Hours of the whole crew/).fill("2");
    await page.getByRole("button", { name: "Find the options" }).click();
    await page.getByRole("heading", { name: "Within the limit" }).waitFor();
    expect(await has(page, "nothing seals more within the limits")).toBe(true);

    const points = page.getByRole("link", { name: /^Point \d+$/ });
    await points.last().click();
    const card = page.locator("section", { has: page.getByRole("heading", { name: /^Point \d+$/ }) }).last();
    expect(await card.textContent()).toMatch(/Saves a year\$[\d,]+ \(\$[\d,]+ to \$[\d,]+\)/);
    const price = (await card.textContent())!.match(/\$[\d,]+(\.\d\d)?/)![0];
    await page.getByRole("button", { name: /^Choose Point/ }).click();
    await page.waitForURL(/#chosen$/);
    await page.getByRole("heading", { name: "Picked by hand" }).waitFor();
    await checkPage(page);
    await page.goto(`${job}/proposal`);
    const address = await issue(page, /Issue the proposal/);
    await page.goto(address);
    expect(await has(page, "Picked by hand")).toBe(true);
    expect(await has(page, price), price).toBe(true);
    await context.close();
  });

  it("without script: open, ask, be answered, choose, accept with name and fingerprint; then a change order", {
    timeout: 300_000,
  }, async () => {
    const office = await desk();
    const page = await office.newPage();
    const job = await openExample(page, "12 Hartwell Lane");
    await page.goto(`${job}/proposal`);
    const address = await issue(page, /Issue the proposal/);
    expect(await has(page, "Issued, not sent yet")).toBe(true);
    await page.getByRole("button", { name: "I have sent it" }).click();
    await page.getByRole("heading", { name: "Sent, not opened yet" }).waitFor();

    const guest = await phone({ javaScriptEnabled: false });
    const home = await guest.newPage();
    const answer = await home.goto(address);
    // Detail is folded, and opens without script.
    const box = await home.locator("html").boundingBox();
    expect(box!.height).toBeLessThan(MOST_PAGE_HEIGHT_PX);
    const leaks = home.getByRole("table", { name: "The leaks we found, largest first" });
    expect(await leaks.isVisible()).toBe(false);
    await home.getByText("The leaks, one by one").click();
    expect(await leaks.isVisible()).toBe(true);
    expect((await answer!.body()).length).toBeLessThan(MOST_PAGE_BYTES);
    expect(await home.locator("script").count()).toBe(0);
    await page.reload();
    expect(await has(page, "Opened by the homeowner")).toBe(true);

    await home.locator("details.ask > summary").click();
    await home.getByLabel("Your question").fill("Is the attic closed again after the work?");
    await home.getByRole("button", { name: "Send the question" }).click();
    expect(await has(home, "Your question was sent.")).toBe(true);
    await page.reload();
    expect(await has(page, "A question waits for your answer")).toBe(true);
    await page.getByRole("textbox", { name: "Your answer" }).fill("Yes, with its insulation back.");
    await page.getByRole("button", { name: "Send the answer" }).click();
    await page.getByText("Yes, with its insulation back.").waitFor();
    await checkPage(page);
    await home.goto(address);
    expect(await has(home, "Yes, with its insulation back.")).toBe(true);

    // An order without name, choice and consent, and one for another paper, are refused with reasons.
    await home.getByRole("button", { name: "Accept", exact: true }).click();
    for (const words of ["Choose one of the options.", "Enter your full name.", "Check the box if you accept."])
      expect(await has(home, words), words).toBe(true);
    const fingerprint = await home.locator('input[name="fingerprint"]').getAttribute("value");
    expect(await home.locator(".digest").textContent()).toBe(fingerprint);
    const forged = await guest.request.post(address, {
      form: {
        intent: "accept",
        lang: "en",
        fingerprint: "0".repeat(64),
        option: "essential",
        name: "Ana",
        agree: "yes",
      },
    });
    expect(forged.status()).toBe(422);
    expect(await forged.text()).toContain("This page was out of date.");

    const offered = await home.locator("label", { hasText: /^The essential/ }).textContent();
    const ordered = /\$[\d,.]+/.exec(offered!)![0];
    await home.getByLabel(/^The essential/).check();
    await home.getByLabel("Type your full name").fill("Ana Invented");
    await home.getByLabel(/I have read this paper/).check();
    await home.getByRole("button", { name: "Accept", exact: true }).click();
    expect(await has(home, "You accepted this paper")).toBe(true);
    expect(await has(home, "You chose “The essential”")).toBe(true);
    expect(await home.getByRole("button", { name: "Accept", exact: true }).count()).toBe(0);
    const paper = textOfPdf(await (await guest.request.get(`${address}/pdf`)).body());
    expect(paper.replaceAll(/\s/g, ""), "the same fingerprint on paper").toContain(fingerprint);

    await page.reload();
    expect(await page.getByRole("heading", { name: "Accepted" }).count()).toBe(1);
    expect(await has(page, "Ana Invented")).toBe(true);
    // The crew does what was ordered, whatever the job planned; the job takes it over with a press.
    const crew = await office.newPage();
    await crew.goto(`${job}/papers/crew-sheet/open`);
    expect(await has(crew, "“The essential”")).toBe(true);
    await page.getByRole("button", { name: "Plan what was ordered" }).click();
    await page.waitForURL(/\/options#chosen$/);
    expect(await page.locator("#chosen h3").textContent()).toBe("The essential");
    await page.goto(`${job}/proposal`);
    expect(await page.getByRole("button", { name: "Plan what was ordered" }).count()).toBe(0);
    const changed = await issue(page, /Issue a change order/, address);
    expect(await has(page, "A change order to the accepted paper below")).toBe(true);
    expect(await page.getByRole("heading", { name: "Accepted" }).count()).toBe(1);
    await home.goto(changed);
    expect(await home.title()).toMatch(/^Change order for/);
    expect(await has(home, `you ordered “The essential” at ${ordered}`), "what was ordered").toBe(true);
    expect(await has(home, fingerprint!.slice(0, 12)), "the paper that is changed").toBe(true);
    await home.goto(address);
    expect(await has(home, "You accepted this paper"), "the order stands").toBe(true);
    // Both papers name and link each other; through the other's link a paper is only read.
    expect(await has(home, "the firm wrote a change order"), "the order tells of its change").toBe(true);
    await home.getByRole("link", { name: "Read the newer paper" }).click();
    await home.waitForURL(/of=newer/);
    expect(await home.title()).toMatch(/^Change order for/);
    expect(await home.locator("form").count()).toBe(0);
    await home.getByRole("link", { name: "Back to the paper of your link" }).click();
    await home.waitForURL(/lang=en$/);
    expect(await has(home, "You accepted this paper")).toBe(true);
    await home.goto(changed);
    await home.getByRole("link", { name: "Read the paper you accepted" }).click();
    await home.waitForURL(/of=earlier/);
    expect(await has(home, "signed as Ana Invented")).toBe(true);

    await guest.close();
    await office.close();
  });

  it("the homeowner's page and the crew's sheet hold on a phone, light and dark, in English and Spanish", {
    timeout: 240_000,
  }, async () => {
    for (const [colorScheme, lang] of [
      ["light", "en"],
      ["dark", "es"],
    ] as const) {
      const context = await phone({ colorScheme });
      const page = await context.newPage();
      const job = await openExample(page, "3 Egret Court");
      await page.goto(`${job}/proposal`);
      await page.goto(`${await issue(page, /Issue/)}?lang=${lang}`);
      await checkPage(page);
      await page.goto(`${job}/papers/crew-sheet/open?lang=${lang}`);
      await checkPage(page);
      await page.goto(`${job}/options`);
      await checkPage(page);
      await page.goto(`${driven.url}/repairs`);
      await checkPage(page);
      await context.close();
    }
  });
});
