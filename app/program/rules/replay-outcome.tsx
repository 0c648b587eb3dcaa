import Link from "next/link";
import { DataTable } from "#app/design/data-table.tsx";
import { type Stat, StatGrid } from "#app/design/stat-block.tsx";
import type { ClaimUnderRule } from "#lib/claims/replay-rule.ts";
import { formatNumber, formatUsdCents } from "#lib/units/format.ts";
import type { ReplayTotal, RuleReplay } from "#lib/work/claims/replay-program-rule.ts";

const change = (before: number, after: number, format: (value: number) => string) =>
  before === after ? format(before) : `${format(before)} → ${format(after)}`;
const whole = (value: number) => formatNumber(Math.round(value), { significantDigits: 12 });
const cents = (value: number) => formatUsdCents(Math.round(value));
const claims = (count: number) => (count === 1 ? "claim" : "claims");

/** Rounded before it is compared: a change of less than one is none. */
const summed = ({ before, after }: { before: ReplayTotal; after: ReplayTotal }) =>
  change(Math.round(before.total), Math.round(after.total), whole);

/** What the deemed rule credits a claim a year. */
const deemedWords = ({ deemed }: ClaimUnderRule): string =>
  deemed ? `${whole(deemed.coolingKWh + deemed.blowerKWh)} kWh, ${whole(deemed.heatingTherms)} therms` : "none";

function deemedChange(before: ClaimUnderRule, after: ClaimUnderRule): string {
  const [was, is] = [deemedWords(before), deemedWords(after)];
  return was === is ? is : `${was} → ${is}`;
}

function range({ low, high }: ReplayTotal, format: (value: number) => string): string | undefined {
  return low === high ? undefined : `by the sample ${format(Math.max(low, Math.min(0, high)))} to ${format(high)}`;
}

/** What a rule that was tried would do: to how many, by how much, and the first of them one by one. */
export function ReplayOutcome({
  replay,
  names,
  sampleSizes,
}: {
  replay: RuleReplay;
  names: ReadonlyMap<string, string>;
  /** Claims to inspect, by the rule in force and by the one tried. */
  sampleSizes: readonly [number, number];
}) {
  const { replayedCount, standingCount, touched, changeUsdCents, examples } = replay;
  const isAll = replayedCount === standingCount;
  const stats: (Stat & { id: string })[] = [
    {
      id: "touched",
      label: "Touched",
      value: whole(touched.total),
      unit: claims(touched.total),
      doubt: range(touched, whole),
    },
    {
      id: "rebates",
      label: "Rebates, by the rules they came under → by the one tried",
      value: change(replay.rebatesBeforeUsdCents.total, replay.rebatesAfterUsdCents.total, cents),
    },
    {
      id: "change",
      label: "Paid more or less",
      value: cents(changeUsdCents.total),
      doubt: range(changeUsdCents, cents),
    },
    {
      id: "electricity",
      label: "Counted over the measure’s life",
      value: summed(replay.lifetimeElectricityKWh),
      unit: "kWh",
    },
    {
      id: "gas",
      label: "Counted over the measure’s life",
      value: summed(replay.lifetimeNaturalGasTherms),
      unit: "therms",
    },
    {
      id: "deemed-electricity",
      label: "Credited a year by the deemed rule",
      value: summed(replay.deemedElectricityKWh),
      unit: "kWh",
    },
    {
      id: "deemed-gas",
      label: "Credited a year by the deemed rule",
      value: summed(replay.deemedNaturalGasTherms),
      unit: "therms",
    },
    {
      id: "inspections",
      label: "To inspect of them",
      value: change(...sampleSizes, whole),
      unit: claims(sampleSizes[1]),
    },
  ];
  return (
    <section aria-labelledby="outcome">
      <h2 id="outcome">What it would do</h2>
      <p>
        {isAll
          ? standingCount === 1
            ? "The one standing claim was gone through."
            : `All ${whole(standingCount)} standing claims were gone through.`
          : `${whole(replayedCount)} of ${whole(standingCount)} standing claims were gone through, a simple random sample; totals are of all, each with the range that covers it in 95 of 100 samples.`}
      </p>
      <StatGrid stats={stats} />
      {examples.length === 0 ? (
        <p>{isAll ? "It would touch no claim." : "It touches none of the sample."}</p>
      ) : (
        <DataTable
          caption={
            examples.length < touched.total
              ? `The first ${examples.length} that it would touch`
              : "Claims that it would touch"
          }
          isCardsWhenNarrow
          columns={[
            { label: "Claim" },
            { label: "Contractor" },
            { label: "Rebate", isNumeric: true },
            { label: "Deemed saving a year" },
            { label: "Evidence missing", isNumeric: true },
            { label: "May take part" },
          ]}
          rows={examples.map(({ id, reference, contractorId, before, after }) => ({
            id,
            cells: [
              <Link key="link" href={`/program/claims/${id}`}>
                {reference}
              </Link>,
              names.get(contractorId) ?? "Another contractor",
              change(before.rebateUsdCents, after.rebateUsdCents, formatUsdCents),
              deemedChange(before, after),
              change(before.missingEvidenceCount, after.missingEvidenceCount, String),
              after.outside.join(". ") || "yes",
            ],
          }))}
        />
      )}
    </section>
  );
}
