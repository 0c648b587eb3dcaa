import { openStore, type Store } from "./open-store.ts";

const KEY = Symbol.for("ductmend.store");
const holder = globalThis as typeof globalThis & { [KEY]?: Promise<Store> };

/** The web app's store: one for the whole process, kept where a reload of the code does not lose it. */
export function sharedStore(): Promise<Store> {
  if (!holder[KEY]) {
    const opening = openStore();
    holder[KEY] = opening;
    // A failed opening is not kept: the next request tries again, for the database may be back.
    opening.catch(() => {
      if (holder[KEY] === opening) delete holder[KEY];
    });
  }
  return holder[KEY];
}

/** Lets go of the web app's store, if it was opened. */
export async function closeSharedStore(): Promise<void> {
  const opening = holder[KEY];
  delete holder[KEY];
  const store = await opening?.catch(() => undefined);
  await store?.close();
}
