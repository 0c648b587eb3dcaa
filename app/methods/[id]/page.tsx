import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { DataTable } from "#app/design/data-table.tsx";
import { Notice } from "#app/design/notice.tsx";
import { METHODS } from "#lib/methods/catalogue.ts";
import { runChecks } from "#lib/methods/run-checks.ts";
import { citationText } from "#lib/sources/source-title.ts";
import { formatNumber } from "#lib/units/format.ts";
import styles from "../methods.module.css";
import { TryIt } from "./try-it.tsx";

interface Props {
  params: Promise<{ id: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { id } = await params;
  return { title: METHODS.find((method) => method.id === id)?.title ?? "Method" };
}

const exact = (value: number) => formatNumber(value, { significantDigits: 7 });

export default async function MethodPage({ params, searchParams }: Props) {
  const { id } = await params;
  const card = METHODS.find((method) => method.id === id);
  if (!card) notFound();
  const checks = runChecks(card);
  const missed = checks.filter((check) => !check.isMet).length;
  return (
    <div className={styles.page}>
      <p>
        <Link href="/methods">All methods</Link>
      </p>
      <h1>{card.title}</h1>
      <p className={styles.lead}>{card.summary}</p>
      <p className={styles.equation}>{card.equation}</p>
      <dl className={styles.facts}>
        <div>
          <dt>Where it holds</dt>
          <dd>{card.validRange}</dd>
        </div>
        <div>
          <dt>What it leaves out</dt>
          <dd>{card.leftOut}</dd>
        </div>
        <div>
          <dt>Source</dt>
          {card.sources.map((source) => (
            <dd key={`${source.sourceId} ${source.locator}`}>{citationText(source)}</dd>
          ))}
        </div>
        <div>
          <dt>On the command line</dt>
          <dd>
            <code>npm run -s ductmend -- calc {card.id}</code>
          </dd>
        </div>
      </dl>
      <section aria-labelledby="try">
        <h2 id="try">Try it</h2>
        <TryIt card={card} texts={await searchParams} />
      </section>
      <section aria-labelledby="checks">
        <h2 id="checks">Published values, computed now</h2>
        {checks.length === 0 ? (
          <p>
            This method has no published value of its own; it is held by properties and by other methods in the tests.
          </p>
        ) : (
          <>
            <Notice
              kind={missed === 0 ? "good" : "problem"}
              title={
                missed === 0
                  ? `All ${checks.length} values come out right.`
                  : `${missed} of ${checks.length} values do not come out right.`
              }
            />
            <DataTable
              caption="Published checks"
              isCaptionHidden
              isCardsWhenNarrow
              columns={[
                { label: "Case" },
                { label: "Number" },
                { label: "Published", isNumeric: true },
                { label: "Here", isNumeric: true },
                { label: "Mark" },
                { label: "Source and tolerance" },
              ]}
              rows={checks.map((check) => ({
                id: `${check.name} ${check.path}`,
                cells: [
                  check.name,
                  <code key="path">{check.path}</code>,
                  exact(check.expected),
                  check.actual === null ? "none" : exact(check.actual),
                  <span key="mark" className={check.isMet ? styles.met : styles.missed}>
                    {check.isMet ? "✓ met" : "✗ missed"}
                  </span>,
                  `${citationText(check.source)}; within ${formatNumber(100 * check.relativeTolerance)} % (${check.toleranceReason})`,
                ],
              }))}
            />
          </>
        )}
      </section>
    </div>
  );
}
