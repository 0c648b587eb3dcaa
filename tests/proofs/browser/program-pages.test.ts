import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { checkPage } from "#tests/browser/chromium.ts";
import { actAs, drivenApp } from "#tests/browser/driven-app.ts";

const driven = drivenApp();

async function reviewersPhone(): Promise<Page> {
  const context = await driven.browser.newContext({ viewport: { width: 390, height: 844 }, colorScheme: "light" });
  const page = await context.newPage();
  await actAs(page, driven, "Ines Calloway");
  return page;
}

describe("the program's rule", () => {
  it("is tried with every figure, refused with the reason, and put in force from a day on", {
    timeout: 60_000,
  }, async () => {
    const page = await reviewersPhone();
    await page.goto(`${driven.url}/program/rules`);
    await checkPage(page);
    await page.getByLabel("Dollars for each cfm at 25 Pa removed").fill("3.10");
    await page.getByLabel("Measure life, in years").fill("90");
    await page.getByRole("button", { name: "Try it" }).click();
    await page.getByText("This is no rule yet.").waitFor();
    await page.getByLabel("Measure life, in years").fill("15");
    await page.getByLabel("Title of the edition").fill("Edition 2027 (invented)");
    await page.getByRole("button", { name: "Try it" }).click();
    await page.getByText(/standing claims? w(as|ere) gone through\.$/).waitFor();
    await checkPage(page);
    await page.getByRole("button", { name: "Put in force" }).click();
    await page.getByText("No reason is given").waitFor();
    // What was tried is still there.
    expect(await page.getByLabel("Measure life, in years").inputValue()).toBe("15");
    await page.getByLabel("First day").fill("2999-01-01");
    await page.getByLabel("Reason").fill("Material costs more (invented).");
    await page.getByRole("button", { name: "Put in force" }).click();
    await page.getByText("The new edition is kept.").waitFor();
    expect(await page.locator("section[aria-labelledby=editions]").textContent()).toMatch(
      /Edition 2027 \(invented\).*Jan 1, 2999.*Material costs more.*Ines Calloway/,
    );
    await checkPage(page);
    await page.context().close();
  });

  it("is told to a contractor in the lists of jobs and claims, until somebody marks it as seen", {
    timeout: 60_000,
  }, async () => {
    const page = await reviewersPhone();
    await actAs(page, driven, "Joel Abara");
    await page.goto(`${driven.url}/program`);
    await page.getByText("another rule counts for work done from Jan 1, 2999 on").waitFor();
    await page.goto(`${driven.url}/jobs`);
    await checkPage(page);
    await page.getByRole("link", { name: "See what it touches" }).click();
    await page.getByRole("heading", { level: 1, name: /a new rule$/ }).waitFor();
    const told = await page.locator("main").textContent();
    expect(told).toMatch(/\$2\.50 for each cfm at 25 Pa removed[\s\S]*\$3\.10 for each cfm at 25 Pa removed/);
    expect(told).toMatch(/18 years[\s\S]*15 years/);
    expect(told).toContain("27 Finch Street");
    await checkPage(page);
    await page.getByRole("button", { name: "Mark as seen" }).click();
    await page.getByText("Marked as seen.").waitFor();
    for (const list of ["/jobs", "/program"]) {
      await page.goto(`${driven.url}${list}`);
      await page.getByRole("heading", { level: 1 }).waitFor();
      expect(await page.getByText("New rule").count()).toBe(0);
    }
    await page.context().close();
  });
});

describe("the programming interface", () => {
  it("is explained on a page, its document can be had, and a key made there opens it", {
    timeout: 60_000,
  }, async () => {
    const page = await reviewersPhone();
    await page.goto(`${driven.url}/api`);
    await checkPage(page);
    const document = (await (await page.request.get(`${driven.url}/openapi.json`)).json()) as { openapi: string };
    expect(document.openapi).toMatch(/^3\.1/);
    await page.goto(`${driven.url}/api/keys`);
    await page.getByLabel("What it is for").fill("Nightly run (invented)");
    await page.locator("#scope-calculate").check();
    await page.getByRole("button", { name: "Make the key" }).click();
    const key = (await page.locator("code").first().textContent())!;
    await checkPage(page);
    const ask = () => page.request.get(`${driven.url}/api/v1/methods`, { headers: { authorization: `Bearer ${key}` } });
    expect((await ask()).status()).toBe(200);
    await page.getByRole("button", { name: "Revoke Nightly run (invented)" }).click();
    await page.getByText("The key is revoked and opens nothing any more.").waitFor();
    const refused = await ask();
    expect(refused.status()).toBe(401);
    expect(refused.headers()["content-type"]).toContain("application/problem+json");
    await page.context().close();
  });
});
