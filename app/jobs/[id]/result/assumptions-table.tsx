import Link from "next/link";
import { DataTable } from "#app/design/data-table.tsx";
import { WithTerms } from "#app/words/with-terms.tsx";
import type { AssumptionEffect } from "#lib/estimate/assumption-effects.ts";
import type { Assumption } from "#lib/job/result/evidence-result.ts";
import { citationText } from "#lib/sources/source-title.ts";
import { sentenceInSystem } from "#lib/units/sentence-in-system.ts";
import type { UnitText } from "#lib/units/unit-text.ts";
import { effectRange } from "../../trip/effect-words.ts";
import { fieldHref } from "../../trip/field-href.ts";
import { sayNumber, sayValue } from "../../trip/said-value.ts";

const spanOf = (effect: AssumptionEffect | undefined): number =>
  effect ? effect.highUsdPerYear - effect.lowUsdPerYear : -1;

/** Every assumed value: what it does to the yearly dollars, why it was taken, and the way to the field that replaces it. */
export function AssumptionsTable({
  jobId,
  assumptions,
  effects,
  dollars,
  text,
}: {
  jobId: string;
  assumptions: readonly Assumption[];
  effects: readonly AssumptionEffect[];
  /** What the dollars are: "Saved a year". */
  dollars: string;
  text: UnitText;
}) {
  const effectOf = new Map(effects.map((effect) => [effect.path, effect]));
  const strongestFirst = [...assumptions].sort((a, b) => spanOf(effectOf.get(b.path)) - spanOf(effectOf.get(a.path)));
  return (
    <DataTable
      caption="Assumed values, the one that moves the dollars most on top"
      isCardsWhenNarrow
      columns={[{ label: "What" }, { label: "Taken as" }, { label: dollars }, { label: "Why" }, { label: "Source" }]}
      rows={strongestFirst.map((each) => ({
        id: each.path,
        cells: [
          <Link key="field" href={fieldHref(jobId, each.path)}>
            {each.title}
          </Link>,
          takenAs(each, text),
          dollarWords(effectOf.get(each.path)),
          <WithTerms key="why">{sentenceInSystem(each.reason, text.system)}</WithTerms>,
          citationText(each.source),
        ],
      }))}
    />
  );
}

function takenAs({ path, value, unit, low, high }: Assumption, text: UnitText): string {
  const taken = sayValue({ path, value, unit }, text);
  if (low === undefined || high === undefined) return taken;
  const say = (number: number) => sayNumber({ path, value: number, unit }, text);
  return `${taken} (${say(low)} to ${say(high)})`;
}

function dollarWords(effect: AssumptionEffect | undefined): string {
  if (!effect) return "not judged";
  return effectRange(effect) ?? "the same";
}
