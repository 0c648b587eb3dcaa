import { createHash } from "node:crypto";
import { realpathSync } from "node:fs";
import { join } from "node:path";

/** First digits of a SHA-256 that tell one checkout on a machine from another. */
const CHECKOUT_DIGITS = 12;

/** A short name of this checkout: clones, tests and CI runs on one machine never share a database. */
export function checkoutId(checkout: string): string {
  return createHash("sha256")
    .update(realpathSync(/* turbopackIgnore: true */ checkout))
    .digest("hex")
    .slice(0, CHECKOUT_DIGITS);
}

/**
 * Where the embedded database keeps its files: `.ductmend/` of the checkout, or for root a folder under /var/lib that
 * the server's own account can enter (a checkout in root's home, mode 700, it cannot).
 * DUCTMEND_STATE_FOLDER names another place.
 */
export function stateFolder({
  checkout,
  isRoot,
  env,
}: {
  checkout: string;
  isRoot: boolean;
  env: Readonly<Record<string, string | undefined>>;
}): string {
  if (env.DUCTMEND_STATE_FOLDER) return env.DUCTMEND_STATE_FOLDER;
  return isRoot ? join("/var/lib/ductmend", checkoutId(checkout)) : join(checkout, ".ductmend");
}
