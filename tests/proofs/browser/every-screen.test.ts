import { mkdirSync, readdirSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { violations } from "#tests/browser/chromium.ts";
import { actAs, drivenApp } from "#tests/browser/driven-app.ts";
import { exampleJob, homeownerPage, PATIENCE_MS, putNewRuleInForce } from "./demo-pages.ts";

/** Where to keep a picture of each screen for whoever wants to look at them; none are kept without it. */
const PICTURES = process.env.PROOF_PICTURES;
const WIDTHS = [390, 768, 1280] as const;
const SCHEMES = ["light", "dark"] as const;
const TRIP_STEPS = ["house", "equipment", "ducts", "readings", "leaks", "energy", "plan"];

const driven = drivenApp();
let screens: readonly Screen[];
beforeAll(async () => {
  screens = await findScreens();
}, 10 * PATIENCE_MS);

interface Screen {
  name: string;
  address: string;
  /** As whom one sees it. */
  actor: string;
}

const ESTIMATOR = "Joel Abara";
const OWNER = "Marit Lindqvist";
const REVIEWER = "Ines Calloway";
/** An address that does not exist has its page too. */
const NOWHERE = "/nowhere";

/** Every page of the app by its route: "jobs/[id]/result". */
const routes = readdirSync("app", { recursive: true, encoding: "utf8" })
  .filter((file) => /(^|\/)page\.tsx$/.test(file))
  .map((file) => file.replace(/\/?page\.tsx$/, ""));
const patternOf = (route: string) => new RegExp(`^/${route.replaceAll(/\[[^\]]+\]/g, "[^/]+")}$`);
/** The most telling route of an address: one without a place-holder before one with it. */
const routeOf = (path: string): string | undefined =>
  routes.filter((route) => patternOf(route).test(path)).sort((a, b) => a.split("[").length - b.split("[").length)[0];

/** Follows the links of the app as all three people do, until no new route turns up: one address for each route. */
async function findScreens(): Promise<Screen[]> {
  const context = await driven.browser.newContext({ viewport: { width: 1280, height: 900 } });
  context.setDefaultTimeout(PATIENCE_MS);
  const page = await context.newPage();
  const found = new Map<string, Screen>();
  await actAs(page, driven, REVIEWER);
  await putNewRuleInForce(page, driven.url);
  for (const [actor, start] of [
    [ESTIMATOR, "/jobs"],
    [OWNER, "/prices"],
    [REVIEWER, "/program"],
  ] as const) {
    await actAs(page, driven, actor);
    const followed = new Set<string>();
    const waiting: string[] = [start, "/api/keys"];
    if (actor === ESTIMATOR) {
      const job = new URL(await exampleJob(page, driven.url)).pathname;
      const tested = new URL(await exampleJob(page, driven.url, /Quarry Road, after/)).pathname;
      waiting.unshift(`${job}/result`, ...TRIP_STEPS.map((step) => `${job}/${step}`), `${tested}/claim`);
      // What is looked up rather than linked to.
      waiting.push("/look", "/look/trip", "/problems/conflict", NOWHERE);
    }
    for (let path = waiting.shift(); path !== undefined; path = waiting.shift()) {
      const route = routeOf(path);
      const step = route === "jobs/[id]/[step]" ? (path.split("/").at(-1) ?? "") : undefined;
      const name = step === undefined ? (route ?? "nowhere") : `jobs/[id]/${step}`;
      // Files, papers and what the API answers are no screens.
      const isFile = (route === undefined && path !== NOWHERE) || (step !== undefined && !TRIP_STEPS.includes(step));
      if (followed.has(name) || isFile || (found.has(name) && path !== start)) continue;
      followed.add(name);
      const response = await page.goto(`${driven.url}${path}`);
      // An address that leads on, or is not for this person, is no screen of its own.
      if (routeOf(new URL(page.url()).pathname) !== route || (response?.status() !== 200 && route !== undefined))
        continue;
      if (!found.has(name)) found.set(name, { name, address: `${driven.url}${path}`, actor });
      const links = await page
        .locator('a[href^="/"]')
        .evaluateAll((all) => all.map((each) => each.getAttribute("href")));
      waiting.push(...links.flatMap((href) => (href && !/^\/h\/|\.\w+$/.test(href) ? [href.split(/[?#]/)[0]!] : [])));
    }
  }
  await context.close();
  found.set("h/[token]", {
    name: "h/[token]",
    address: await homeownerPage(driven.browser, driven.url),
    actor: ESTIMATOR,
  });
  return [...found.values()];
}

/** Two frames: the colors of the scheme are on the screen, however busy the page is. */
const painted = (page: Page): Promise<unknown> =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe("every screen with the demonstration data", () => {
  it("is found by its links: each page of the app has an address that was opened", () => {
    const opened = new Set(screens.map(({ address }) => routeOf(new URL(address).pathname)));
    console.log(`${screens.length} screens of ${routes.length} routes`);
    // The first two lead on to another page; the last needs prices of one's own, which the examples have not.
    const leftOut = new Set(["", "jobs/[id]", "prices/[version]"]);
    expect(routes.filter((route) => !opened.has(route) && !leftOut.has(route))).toEqual([]);
  });

  it.each(WIDTHS)(
    "at %i px, light and dark: axe finds nothing, nothing runs off, no foreign request, no error",
    async (width) => {
      // A color on its way from light to dark has no contrast worth judging.
      const context = await driven.browser.newContext({ viewport: { width, height: 900 }, reducedMotion: "reduce" });
      context.setDefaultTimeout(PATIENCE_MS);
      const page = await context.newPage();
      const faults: string[] = [];
      const note = (fault: string) => {
        console.log(`${width} px, ${fault}`);
        faults.push(fault);
      };
      let at = "";
      page.on("request", (request) => {
        const address = request.url();
        if (!address.startsWith(driven.url) && !/^(data|blob):/.test(address)) note(`${at}: asks ${address}`);
      });
      page.on("pageerror", (error) => note(`${at}: ${error.message}`));
      page.on("console", (message) => {
        // The browser itself logs the 404 of an address that does not exist.
        const { url } = message.location();
        if (message.type() === "error" && !url.endsWith(NOWHERE)) note(`${at}: ${message.text()} (${url})`);
      });
      let actor = "";
      for (const screen of screens) {
        if (screen.actor !== actor) await actAs(page, driven, screen.actor);
        actor = screen.actor;
        at = screen.name;
        await page.emulateMedia({ colorScheme: "light" });
        await page.goto(screen.address);
        await page.waitForLoadState("networkidle");
        for (const colorScheme of SCHEMES) {
          await page.emulateMedia({ colorScheme });
          await painted(page);
          for (const fault of await violations(page)) note(`${at}, ${colorScheme}: ${fault}`);
          if (PICTURES) {
            mkdirSync(PICTURES, { recursive: true });
            const file = `${screen.name.replaceAll(/\W+/g, "-")}-${width}-${colorScheme}.png`;
            await page.screenshot({ path: join(PICTURES, file), fullPage: true });
          }
        }
        const over = await sideways(page);
        if (over > 0) note(`${at}: ${over} px run off the side`);
      }
      await context.close();
      expect(faults).toEqual([]);
    },
  );
});
