import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import { writeHpxml } from "#lib/exchange/hpxml/write-hpxml.ts";
import { checkPage } from "#tests/browser/chromium.ts";
import { actAs, drivenApp } from "#tests/browser/driven-app.ts";
import { claimGenerator } from "#tests/claims/generated-claims.ts";
import { exampleWithReference } from "#tests/estimate/example-jobs.ts";

/** The server may start beside other work. */
const LONGEST_START_MS = 120_000;

const driven = drivenApp();
let page: Page;
const folder = mkdtempSync(join(tmpdir(), "ductmend-files-"));

beforeAll(async () => {
  const context = await driven.browser.newContext({ viewport: { width: 390, height: 844 }, colorScheme: "light" });
  page = await context.newPage();
  await actAs(page, driven, "Ines Calloway");
}, LONGEST_START_MS);
afterAll(async () => {
  rmSync(folder, { recursive: true, force: true });
});

const main = () => page.locator("main");
const fileOf = (name: string, text: string): string => {
  const file = join(folder, name);
  writeFileSync(file, text);
  return file;
};

describe("claims by file", () => {
  it("come in with their refusals told, are recomputed again, and leave as a table", { timeout: 120_000 }, async () => {
    const make = await claimGenerator();
    const lines = [JSON.stringify(make(1)), JSON.stringify(make(2)), "{ not json"];
    await page.goto(`${driven.url}/program/import`);
    await checkPage(page);
    await page.getByLabel("File with claims").setInputFiles(fileOf("two.ndjson", lines.join("\n")));
    await page.getByLabel(/^Contractor of claims/).selectOption({ index: 1 });
    await page.getByRole("button", { name: "Take the claims in" }).click();
    await page.waitForURL(/batch=/);
    await page.getByText("This line is not JSON").waitFor();
    await page.getByRole("button", { name: "Recompute all claims again" }).click();
    await page.getByText("All claims again").first().waitFor();
    await expect
      .poll(
        async () => {
          await page.goto(`${driven.url}/program/import`);
          return await main().textContent();
        },
        { timeout: 30_000 },
      )
      .toContain("3, 0, 0");
    await checkPage(page);
    const table = await (await page.request.get(`${driven.url}/program/export?q=generated-`)).text();
    expect(table.trim().split("\r\n")).toHaveLength(3);
    expect(table).toMatch(/^claim,claimId,contractor,/);
  });

  it("a house as HPXML says what it can be checked for and what not", { timeout: 60_000 }, async () => {
    const { job, reference } = await exampleWithReference("mixed-crawlspace-retest.json");
    const result = await estimate(job, reference);
    const xml = writeHpxml({ job, result, elevationFt: reference.climate.elevationFt, date: "2026-11-25" });
    await page.goto(`${driven.url}/program/import`);
    await page.getByLabel("File with claims").setInputFiles(fileOf("house.xml", xml));
    await page.getByRole("button", { name: "Take the claims in" }).click();
    await page.getByText("HPXML does not say whose claim this is").waitFor();
    await page.getByLabel("Contractor that the house comes from").selectOption({ index: 1 });
    await page.getByRole("button", { name: "Take the claims in" }).click();
    await page.waitForURL(/\/program\/claims\//);
    await page.getByText("The leakage itself cannot be recomputed").waitFor();
    await page.getByText(/^What of the file was not read/).click();
    expect(await main().textContent()).toContain("no fan pressure, restrictor or direction");
    await checkPage(page);
  });
});
