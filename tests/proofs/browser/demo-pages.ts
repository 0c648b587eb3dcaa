import type { Browser, Page } from "playwright-core";

/** A page that starts the solver and ten thousand draws may take its time on a busy machine. */
export const PATIENCE_MS = 90_000;

/** The address of the example job that has leaks, both seasons and a picked scope; `/house` and the like come after it. */
export async function exampleJob(page: Page, url: string, name = /^12 Hartwell Lane/): Promise<string> {
  await page.goto(`${url}/jobs`);
  const href = await page.getByRole("link", { name }).first().getAttribute("href");
  return `${url}${href?.replace(/\/result$/, "")}`;
}

/** Puts another rule of the program in force from a far day on, as its reviewer: then its contractors are told. */
export async function putNewRuleInForce(page: Page, url: string): Promise<void> {
  await page.goto(`${url}/program/rules`);
  await page.getByLabel("Dollars for each cfm at 25 Pa removed").fill("3.10");
  await page.getByLabel("Title of the edition").fill("Edition 2027 (invented)");
  await page.getByRole("button", { name: "Try it" }).click();
  await page.getByText(/standing claims? w(as|ere) gone through\.$/).waitFor();
  await page.getByLabel("First day").fill("2999-01-01");
  await page.getByLabel("Reason").fill("Material costs more (invented).");
  await page.getByRole("button", { name: "Put in force" }).click();
  await page.getByText("The new edition is kept.").waitFor();
}

/** Issues a proposal for an example and gives the homeowner's address. */
export async function homeownerPage(browser: Browser, url: string): Promise<string> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  context.setDefaultTimeout(PATIENCE_MS);
  const page = await context.newPage();
  await page.goto(`${await exampleJob(page, url)}/proposal`);
  await page.getByRole("button", { name: /^Issue the proposal/ }).click();
  const link = page.locator('a[href*="/h/"]:not([href*="/pdf"])').first();
  await link.waitFor();
  const href = await link.getAttribute("href");
  await context.close();
  return new URL(href ?? "", url).href;
}
