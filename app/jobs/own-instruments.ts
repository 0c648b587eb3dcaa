import "server-only";
import type { Scope } from "#lib/store/scope.ts";
import type { Draft } from "./trip/draft.ts";
import type { OwnInstruments } from "./trip/steps/own-instruments.ts";

/** The instruments that an organization has in use, as plain data for a job. */
export async function ownInstruments({ instruments }: Scope): Promise<OwnInstruments> {
  const inUse = (await instruments.list()).filter(({ isRetired }) => !isRetired);
  const plain = (kind: "fan" | "gauge"): Draft[] =>
    inUse.flatMap((each) => (each.kind === kind ? [JSON.parse(JSON.stringify(each.instrument)) as Draft] : []));
  return { fans: plain("fan"), gauges: plain("gauge") };
}
