import type { Identity } from "#lib/store/identity.ts";
import type { Store } from "#lib/store/open-store.ts";

const TIMES = 7;

/** How long the program's list of claims and its summary take: the median of seven each, in milliseconds. */
export async function listAndSummaryMs(
  store: Store,
  reviewer: Identity,
): Promise<{ listMs: number; summaryMs: number }> {
  const median = async (work: () => Promise<unknown>) => {
    const times: number[] = [];
    for (let i = 0; i < TIMES; i++) {
      const from = performance.now();
      await work();
      times.push(performance.now() - from);
    }
    return Math.round(times.sort((one, other) => one - other)[Math.floor(TIMES / 2)]!);
  };
  return {
    listMs: await median(() => store.withOrganization(reviewer, ({ claims }) => claims.list())),
    summaryMs: await median(() => store.withOrganization(reviewer, ({ claims }) => claims.summary())),
  };
}
