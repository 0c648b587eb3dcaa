import { readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join, normalize, relative } from "node:path";

/** One import statement of one file. */
export interface ImportEdge {
  from: string;
  to: string;
  isTypeOnly: boolean;
}

export interface SourceFile {
  path: string;
  text: string;
}

const SOURCE = /\.(ts|tsx|mjs)$/;

/** Every source file below the given folders, paths relative to the root. */
export function readSources(root: string, folders: readonly string[]): SourceFile[] {
  const files: SourceFile[] = [];
  const walk = (folder: string) => {
    for (const name of readdirSync(folder).sort()) {
      const path = join(folder, name);
      if (statSync(path).isDirectory()) {
        if (name !== "generated" && name !== "node_modules") walk(path);
      } else if (SOURCE.test(name)) files.push({ path: relative(root, path), text: readFileSync(path, "utf8") });
    }
  };
  for (const folder of folders) walk(join(root, folder));
  return files;
}

const IMPORT =
  /(?:^|\n)\s*(import|export)\s+(type\s+)?(?:[^"';]*?\sfrom\s+)?["']([^"']+)["']|import\(\s*["']([^"']+)["']\s*\)/g;

/** The imports of one file, with `#lib/…` and `./…` turned into paths of the project. */
export function importsOf({ path, text }: SourceFile): ImportEdge[] {
  return [...text.matchAll(IMPORT)].map(([, , type, from, dynamic]) => {
    const target = (from ?? dynamic)!;
    const to = target.startsWith("#")
      ? target.slice(1)
      : target.startsWith(".")
        ? normalize(join(dirname(path), target))
        : target;
    return { from: path, to, isTypeOnly: type !== undefined };
  });
}
