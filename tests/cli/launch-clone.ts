import { spawn } from "node:child_process";
import { chmodSync, cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { text } from "node:stream/consumers";

/**
 * A checkout in small: the launcher as it is, and stand-ins for what it starts. `npm` notes each call and lays down the
 * other stand-ins, as an installation would.
 */
export class SmallClone {
  readonly root = mkdtempSync(join(tmpdir(), "ductmend-clone-"));

  constructor() {
    for (const path of ["lib/cli/launch.mjs", "lib/cli/launch", "lib/store/embedded/process-lock.mjs"]) {
      cpSync(path, join(this.root, path), { recursive: true });
    }
    this.write("package.json", JSON.stringify({ type: "module" }));
    this.write(
      "package-lock.json",
      JSON.stringify({ packages: { "": {}, "node_modules/prisma": { version: "1.0.0" } } }),
    );
    this.write("prisma/schema.prisma", "");
    this.write("lib/cli/ductmend.ts", "// first");
    this.write("bin/package.json", JSON.stringify({ type: "commonjs" }));
    this.write("bin/npm", FAKE_NPM);
    chmodSync(join(this.root, "bin/npm"), 0o755);
  }

  write(path: string, content: string): void {
    mkdirSync(join(this.root, path, ".."), { recursive: true });
    writeFileSync(join(this.root, path), content);
  }

  /** What the stand-ins were asked to do, in order. */
  calls(): string[] {
    const file = join(this.root, "calls.txt");
    return existsSync(file) ? readFileSync(file, "utf8").trim().split("\n") : [];
  }

  async run(args: readonly string[], env: Record<string, string> = {}, cwd = this.root) {
    const child = spawn(process.execPath, [join(this.root, "lib/cli/launch.mjs"), ...args], {
      cwd,
      env: {
        NODE_ENV: process.env.NODE_ENV,
        PATH: `${join(this.root, "bin")}:${process.env.PATH}`,
        CALLS: join(this.root, "calls.txt"),
        ...env,
      },
    });
    const exit = new Promise<number | null>((resolve) => child.once("close", resolve));
    const [stdout, stderr] = await Promise.all([text(child.stdout), text(child.stderr)]);
    return { stdout, stderr, exitCode: await exit };
  }
}

const FAKE_NPM = `#!/usr/bin/env node
const { appendFileSync, mkdirSync, writeFileSync } = require("node:fs");
const note = (what) => 'require("node:fs").appendFileSync(process.env.CALLS, ' + JSON.stringify(what + "\\n") + ');';
appendFileSync(process.env.CALLS, "npm " + process.argv.slice(2, 4).join(" ") + " " + process.env.NODE_ENV + "\\n");
console.log("npm speaks");
Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, Number(process.env.SLOW_MS ?? 0));
const put = (path, content) => { mkdirSync(require("node:path").dirname(path), { recursive: true }); writeFileSync(path, content); };
put("node_modules/prisma/build/index.js", note("generate") + 'console.log("prisma speaks")');
put("node_modules/esbuild/package.json", '{"main":"index.js"}');
put("node_modules/esbuild/index.js", note("bundle") + \`
  exports.build = async () => {
    require("node:fs").mkdirSync(".build/cli", { recursive: true });
    require("node:fs").writeFileSync(".build/cli/ductmend.mjs", 'process.stdout.write(JSON.stringify({ args: process.argv.slice(2), here: process.cwd(), user: process.env.INIT_CWD })); process.exitCode = Number(process.env.EXIT ?? 0);');
  };\`);
`;
