import { Bench } from "tinybench";

/** Median of one task in milliseconds. */
export async function medianMs(name: string, run: () => Promise<unknown>, time = 1500): Promise<number> {
  const bench = new Bench({ time, warmupTime: 500 });
  bench.add(name, run);
  await bench.run();
  const result = bench.tasks[0]?.result;
  if (!result || !("latency" in result)) throw new Error(`The benchmark ${name} did not finish`);
  return result.latency.p50;
}
