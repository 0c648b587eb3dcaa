/**
 * The layers of lib, lowest first. A file imports from its own or an earlier layer; siblings in one list do not import
 * each other. Everything above the line is pure: the same code runs in the browser, on the server and in a worker.
 */
export const LAYERS: readonly (readonly string[])[] = [
  ["units"],
  ["sources"],
  ["errors"],
  ["hash"],
  ["numeric"],
  ["air"],
  ["job"],
  ["measure", "apportion", "climate", "loads", "distribution", "scope", "savings", "retest"],
  ["setup"],
  ["estimate"],
  ["simulate"],
  ["pictures"],
  ["methods"],
  ["claims"],
  // ── from here on impure ──
  ["reference-data"],
  ["exchange"],
  ["documents"],
  ["store"],
  ["access"],
  ["work"],
  ["cli"],
  ["examples"],
];

const FIRST_IMPURE = "reference-data";

export const layerOf = (folder: string): number => LAYERS.findIndex((layer) => layer.includes(folder));
export const isPure = (folder: string): boolean => layerOf(folder) < layerOf(FIRST_IMPURE);
export const folderOf = (path: string): string | null => /^lib\/([^/]+)\//.exec(path)?.[1] ?? null;
