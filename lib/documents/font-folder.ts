import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** Where the letters are: the packages stand above the working folder, or above this file once bundled. */
export function fontFolder(): string {
  const starts = [
    process.cwd(),
    ...(import.meta.url.startsWith("file:") ? [dirname(fileURLToPath(import.meta.url))] : []),
  ];
  for (const start of starts) {
    for (let folder = start; ; folder = dirname(folder)) {
      const fonts = join(folder, "node_modules/@fontsource");
      if (existsSync(/* turbopackIgnore: true */ fonts)) return fonts;
      if (dirname(folder) === folder) break;
    }
  }
  throw new Error("The packages @fontsource/* are missing from the project");
}
