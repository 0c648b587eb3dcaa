import { once } from "node:events";
import { createWriteStream } from "node:fs";
import { canonicalJson } from "#lib/hash/content-hash.ts";
import { claimGenerator } from "#tests/claims/generated-claims.ts";

/** Claims one a line, written as they are made, so that any number of them fits. */
export async function writeGeneratedClaims(file: string, count: number): Promise<void> {
  const out = createWriteStream(file);
  const make = await claimGenerator();
  for (let i = 0; i < count; i++) if (!out.write(`${canonicalJson(make(i))}\n`)) await once(out, "drain");
  out.end();
  await once(out, "finish");
}
