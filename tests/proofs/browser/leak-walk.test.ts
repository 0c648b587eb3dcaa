import { createHash } from "node:crypto";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { checkPage } from "#tests/browser/chromium.ts";
import { drivenApp } from "#tests/browser/driven-app.ts";
import { exampleDocument } from "#tests/estimate/example-jobs.ts";

const driven = drivenApp();

/** A photo as a phone takes it: larger than is kept, with a position in the part that cameras write (Exif in APP1). */
async function photoWithPosition(color: string): Promise<Buffer> {
  const page = await driven.browser.newPage({ viewport: { width: 2400, height: 1800 } });
  await page.setContent(`<body style="background: ${color}">`);
  const picture = await page.screenshot({ type: "jpeg" });
  await page.close();
  const words = Buffer.from("Exif\0\0GPSLatitude 43.0731 GPSLongitude -89.4012");
  const part = Buffer.alloc(4);
  part.writeUInt16BE(0xffe1, 0);
  part.writeUInt16BE(words.length + 2, 2);
  return Buffer.concat([picture.subarray(0, 2), part, words, picture.subarray(2)]);
}

const LEAKS = [
  { spot: /^Supply/, band: "As wide as a pencil, about 1/4 in", reach: "Easy" },
  { spot: /^Supply/, band: "Hairline, about 1/32 in", reach: "Easy" },
  { spot: /^Supply/, band: "As wide as a pencil, about 1/4 in", reach: "Hard" },
  { spot: /^Supply/, band: "As wide as a pencil, about 1/4 in", reach: "Moderate" },
  { spot: /^Supply/, band: "Hairline, about 1/32 in", reach: "Moderate" },
  { spot: /^Air handler/, band: "Hairline, about 1/32 in", reach: "Easy" },
  { spot: /^Air handler/, band: "As wide as a pencil, about 1/4 in", reach: "Easy" },
  { spot: /^Return/, band: "As wide as a pencil, about 1/4 in", reach: "Easy" },
  { spot: /^Return/, band: "Hairline, about 1/32 in", reach: "Hard" },
  { spot: /^Return/, band: "As wide as a pencil, about 1/4 in", reach: "Easy" },
] as const;

/** The first leaks are put by a finger on the drawing; the rest by the choice below it. */
const DRAWN = [/^Supply, .*register box, 1 of/, /^Supply, .*register box, 3 of/, /^Supply, .*branch leaves.*, 4 of/];

/** Taps the duct a few pixels beside the spot, as a finger does, and puts a leak there. */
async function putOnDrawing(page: Page, spot: RegExp): Promise<void> {
  const mark = page.locator("#walk-drawing fieldset").getByRole("radio", { name: spot });
  await page.locator("#walk-drawing").evaluate((drawing) => drawing.scrollIntoView());
  const box = await mark.boundingBox();
  if (!box) throw new Error("The spot is not on the screen");
  await page.touchscreen.tap(box.x + box.width / 2 + 3, box.y + box.height / 2 + 2);
  expect(await page.locator("#walk-drawing [role=status]").textContent()).toMatch(spot);
  await page.getByRole("button", { name: "Add a leak here" }).tap();
}

describe.each([390, 360])("a leak walk on a phone of %i px", (phoneWidth) => {
  it("takes ten leaks with photos, follows each with what is still hidden, and keeps the picture alone", {
    timeout: 300_000,
  }, async () => {
    const context = await driven.browser.newContext({
      viewport: { width: phoneWidth, height: 780 },
      hasTouch: true,
      isMobile: true,
    });
    const page = await context.newPage();
    const start = { ...exampleDocument("cold-attic-furnace.json"), title: "Walk Lane (invented)", sites: [] };
    await page.goto(`${driven.url}/jobs/import`);
    await page.locator("input[type=file]").setInputFiles({
      name: "walk.json",
      mimeType: "application/json",
      buffer: Buffer.from(JSON.stringify(start)),
    });
    await page.locator("main form button[type=submit]").first().click();
    await page.waitForURL(/\/house$/);
    await page.goto(page.url().replace(/house$/, "leaks"));

    const state = page.getByText(/ found, .* not yet found\.$/);
    await state.waitFor();
    expect(await state.textContent()).toMatch(/^0 cfm found, 28\d cfm not yet found\.$/);
    await page.getByText("Where to look next").waitFor();
    await page.getByText("What would tell most").waitFor();
    await checkPage(page);

    for (const [index, { spot, band, reach }] of LEAKS.entries()) {
      if (index < DRAWN.length) await putOnDrawing(page, DRAWN[index]!);
      else {
        await page.getByRole("radio", { name: spot }).last().check();
        await page.getByRole("button", { name: "Add a leak", exact: true }).tap();
      }
      const card = page.locator("li[id^=leak-]").nth(index);
      await card.getByLabel("Gap as it looks").selectOption({ label: band });
      await card.getByRole("radio", { name: reach, exact: true }).check();
      await card.getByLabel("Photos").setInputFiles({
        name: `photo-${index}.jpg`,
        mimeType: "image/jpeg",
        buffer: await photoWithPosition(`hsl(${36 * index} 60% 50%)`),
      });
      await card.getByText(/· 1 photo$/).waitFor();
    }
    await page.waitForFunction(() => document.querySelectorAll("main svg [data-item^=leak-]").length >= 10);
    expect(await state.textContent()).not.toMatch(/^0 cfm found/);
    await checkPage(page);

    // A leak stands on the drawing where it was put, and can be put elsewhere.
    const at = (id: string) =>
      page.locator(`#walk-drawing svg:visible [data-item="${id}"] circle`).first().boundingBox();
    const radio = page.locator("#walk-drawing fieldset").getByRole("radio", { name: DRAWN[0]! });
    const middle = (box: { x: number; y: number; width: number; height: number } | null) =>
      box ? [box.x + box.width / 2, box.y + box.height / 2] : [];
    const id = (await page.locator("li[id^=leak-]").first().getAttribute("id"))!.replace(/^leak-/, "");
    const [disc, mark] = [middle(await at(id)), middle(await radio.boundingBox())];
    expect(Math.hypot(disc[0]! - mark[0]!, disc[1]! - mark[1]!)).toBeLessThan(20);

    // A flow far above what was measured is said to be so, and nothing is blocked.
    const first = page.locator("li[id^=leak-]").first();
    await first.locator("summary").first().tap();
    await first.getByLabel("Gap as it looks").selectOption({ label: "As a flow" });
    await first.getByLabel(/Leakage at 25 Pa, estimated/).fill("900");
    await page.getByText("Found leaks add up to more than was measured").waitFor();
    await checkPage(page);
    await first.getByLabel("Gap as it looks").selectOption({ label: "Hairline, about 1/32 in" });
    await page.getByText("Found leaks add up to more than was measured").waitFor({ state: "detached" });

    await page.getByRole("button", { name: /Continue to energy/ }).tap();
    await page.waitForURL(/\/energy$/);
    await page.goto(page.url().replace(/energy$/, "leaks"));
    await page.locator("li[id^=leak-]").nth(9).waitFor();
    const addresses = await page
      .locator("li[id^=leak-] img")
      .evaluateAll((all) => all.map((each) => (each as HTMLImageElement).src));
    expect(new Set(addresses).size).toBe(10);
    for (const address of addresses) {
      const bytes = await (await context.request.get(address)).body();
      expect(createHash("sha256").update(bytes).digest("hex")).toBe(address.split("/").at(-1));
      expect(bytes.includes("GPS")).toBe(false);
      expect(bytes.includes("Exif")).toBe(false);
    }
    const width = await page.evaluate(async (src) => {
      const image = new Image();
      image.src = src;
      await image.decode();
      return image.naturalWidth;
    }, addresses[0]!);
    expect(width).toBe(1600);
    await context.close();
  });

  it("puts crossover and belly first in a manufactured home", { timeout: 60_000 }, async () => {
    const context = await driven.browser.newContext({ viewport: { width: phoneWidth, height: 780 } });
    const page = await context.newPage();
    const example = exampleDocument("mixed-crawlspace-heat-pump.json");
    const house = { ...(example.house as object), kind: "manufactured" };
    await page.goto(`${driven.url}/jobs/import`);
    await page.locator("input[type=file]").setInputFiles({
      name: "home.json",
      mimeType: "application/json",
      buffer: Buffer.from(JSON.stringify({ ...example, house, sites: [] })),
    });
    await page.locator("main form button[type=submit]").first().click();
    await page.waitForURL(/\/house$/);
    await page.goto(page.url().replace(/house$/, "leaks"));
    await page.getByText(/Not seen there yet: duct that joins the two halves of a manufactured home/).waitFor();
    await page.getByRole("button", { name: "Add a leak" }).click();
    const kinds = await page.getByLabel("Kind of leak").locator("option").allTextContents();
    expect(kinds.slice(0, 2)).toEqual([
      "Duct that joins the two halves of a manufactured home",
      "Leaks inside the belly of a manufactured home",
    ]);
    await context.close();
  });
});
