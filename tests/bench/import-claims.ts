import { DEMO_IDENTITIES, DEMO_ORGANIZATIONS } from "#lib/access/demo-identities.ts";
import { seedDemo } from "#lib/access/seed-demo.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { canonicalJson } from "#lib/hash/content-hash.ts";
import { ndjsonLines } from "#lib/work/claims/claim-lines.ts";
import { importClaims } from "#lib/work/claims/import-claims.ts";
import { claimGenerator } from "#tests/claims/generated-claims.ts";
import { temporaryDatabase } from "#tests/store/temporary-database.ts";

const CLAIMS = 3000;
const WARM_UP = 400;

/** Claims read, verified, stored and queued a second, by one process with a database of its own; not yet checked. */
export async function measureImport(): Promise<{ name: string; value: number; unit: string }> {
  const make = await claimGenerator();
  const lines = Array.from({ length: WARM_UP + CLAIMS }, (_, i) => `${canonicalJson(make(i))}\n`);
  async function* textOf(part: readonly string[]) {
    yield* part;
  }
  const { store, remove } = await temporaryDatabase();
  try {
    await seedDemo(store, [], ENGINE_VERSION);
    const take = (part: readonly string[]) =>
      importClaims(store, DEMO_IDENTITIES.reviewer, {
        contractorId: DEMO_ORGANIZATIONS.contractor.id,
        sourceName: "bench",
        lines: ndjsonLines(textOf(part)),
      });
    await take(lines.slice(0, WARM_UP));
    const began = performance.now();
    await take(lines.slice(WARM_UP));
    return { name: "import-claims-per-second", value: (CLAIMS / (performance.now() - began)) * 1000, unit: "1/s" };
  } finally {
    await remove();
  }
}
