import type { Locator, Page } from "playwright-core";

/** One way to use a page: what it presses, types and chooses is all that it can do. */
export interface Hand {
  press(target: Locator): Promise<void>;
  type(target: Locator, text: string): Promise<void>;
  /** One radio of its group. */
  choose(target: Locator): Promise<void>;
}

const MOST_TABS = 300;
const MOST_ARROWS = 12;

/** Nothing but keys: a target is reached by Tab as anybody reaches it, or the test fails. */
export function keyboardHand(page: Page): Hand {
  const isFocused = (target: Locator) => target.evaluate((element) => element === document.activeElement);
  const isInGroup = (target: Locator) =>
    target.evaluate((element) => {
      const focused = document.activeElement;
      const [wanted, here] = [element, focused] as [HTMLInputElement, HTMLInputElement];
      return here?.type === "radio" && here.name === wanted.name;
    });
  const tabUntil = async (target: Locator, isThere: (target: Locator) => Promise<boolean>) => {
    await target.waitFor();
    for (let tabs = 0; tabs < MOST_TABS; tabs++) {
      if (await isThere(target)) return;
      await page.keyboard.press("Tab");
    }
    throw new Error(`The Tab key does not reach ${target}`);
  };
  return {
    async press(target) {
      await tabUntil(target, isFocused);
      await page.keyboard.press("Enter");
    },
    async type(target, text) {
      await tabUntil(target, isFocused);
      await page.keyboard.type(text);
    },
    async choose(target) {
      await tabUntil(target, isInGroup);
      for (let arrows = 0; arrows < MOST_ARROWS; arrows++) {
        if (await target.isChecked()) return;
        await page.keyboard.press((await isFocused(target)) ? "Space" : "ArrowDown");
      }
      throw new Error(`The arrow keys do not choose ${target}`);
    },
  };
}

/** A finger on the glass. */
export function touchHand(page: Page): Hand {
  return {
    press: (target) => target.tap(),
    async type(target, text) {
      await target.tap();
      await page.keyboard.type(text);
    },
    choose: (target) => target.tap(),
  };
}
