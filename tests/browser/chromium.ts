import { AxeBuilder } from "@axe-core/playwright";
import { type Browser, chromium, type Page } from "playwright-core";
import { expect } from "vitest";

/** The browser of the system, which asks nothing of the network on its own account. */
export function launchChromium(): Promise<Browser> {
  return chromium.launch({
    executablePath: "/usr/bin/chromium",
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
}

/** What axe finds on a page, each with the first element that has it. */
export async function violations(page: Page): Promise<string[]> {
  const found = await new AxeBuilder({ page }).analyze();
  return found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
}

/** Axe finds nothing on the page, and nothing runs off its side. */
export async function checkPage(page: Page): Promise<void> {
  expect(await violations(page), page.url()).toEqual([]);
  const sideways = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(sideways, page.url()).toBeLessThanOrEqual(0);
}
