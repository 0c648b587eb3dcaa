import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll } from "vitest";
import { type AppServer, startApp } from "./app-server.ts";
import { launchChromium } from "./chromium.ts";

export interface DrivenApp {
  readonly url: string;
  readonly browser: Browser;
}

/** The app may start beside other work. */
const LONGEST_START_MS = 120_000;

/** The built app and a browser for the tests of a file: both are there before the first test and gone after the last. */
export function drivenApp(): DrivenApp {
  let app: AppServer | undefined;
  let browser: Browser | undefined;
  beforeAll(async () => {
    [app, browser] = await Promise.all([startApp(), launchChromium()]);
  }, LONGEST_START_MS);
  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  }, LONGEST_START_MS);
  const started = <Thing>(thing: Thing | undefined): Thing => {
    if (thing === undefined) throw new Error("The app is there only while tests run");
    return thing;
  };
  return {
    get url() {
      return started(app).url;
    },
    get browser() {
      return started(browser);
    },
  };
}

/** Becomes one of the demonstration's people; stays who one is where that is this person. */
export async function actAs(page: Page, { url }: Pick<DrivenApp, "url">, name: string): Promise<void> {
  await page.goto(`${url}/who`);
  const button = page.getByRole("button", { name: `Act as ${name}` });
  if ((await button.count()) === 0) return;
  await button.click();
  await page.waitForURL((address) => address.pathname !== "/who");
}
