import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { ERROR_TABLE, type ErrorCode } from "#lib/errors/error-table.ts";
import styles from "../../methods/methods.module.css";

interface Props {
  params: Promise<{ code: string }>;
}

const isKnown = (code: string): code is ErrorCode => Object.hasOwn(ERROR_TABLE, code);

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { code } = await params;
  return { title: isKnown(code) ? ERROR_TABLE[code].title : "Problem" };
}

/** What the `type` of problem details points at: the same words everywhere. */
export default async function ProblemPage({ params }: Props) {
  const { code } = await params;
  if (!isKnown(code)) notFound();
  const { title, help, status, exitCode } = ERROR_TABLE[code];
  return (
    <div className={styles.page}>
      <h1>{title}</h1>
      <p className={styles.lead}>{help}</p>
      <dl className={styles.facts}>
        <div>
          <dt>Code</dt>
          <dd>
            <code>{code}</code>
          </dd>
        </div>
        <div>
          <dt>For programs</dt>
          <dd>
            HTTP status {status}; the command line ends with {exitCode}.
          </dd>
        </div>
      </dl>
    </div>
  );
}
