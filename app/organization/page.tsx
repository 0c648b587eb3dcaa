import type { Metadata } from "next";
import Link from "next/link";
import { Notice } from "#app/design/notice.tsx";
import { showAs } from "#app/jobs/session.ts";
import { can } from "#lib/access/can.ts";
import { letterheadOf } from "#lib/documents/letterhead/letterhead.ts";
import { contractorOf } from "./contractor-of.ts";
import { firmDraftOf } from "./firm-draft.ts";
import { FirmForm } from "./firm-form.tsx";
import { LetterheadSample } from "./letterhead-sample.tsx";
import { LogoForm } from "./logo-form.tsx";
import styles from "./organization.module.css";

export const metadata: Metadata = { title: "Your firm" };

const SAVED: Readonly<Record<string, string>> = {
  firm: "Saved. The next paper carries it; papers that are out stay as they were.",
  logo: "The logo stands on the next paper.",
  "no-logo": "The logo is gone; papers carry the name.",
};

const PARTS = [
  { href: "/prices", title: "Prices", says: "What an hour and a gallon cost, version by version" },
  { href: "/repairs", title: "Repairs", says: "How you close each kind of leak, and what retests taught" },
  { href: "/instruments", title: "Instruments", says: "Fans, gauges, and when they are due" },
] as const;

/** The firm: its name, license, logo and color on papers, what it promises, and the way to all it keeps. */
export default async function OrganizationPage({ searchParams }: { searchParams: Promise<{ saved?: string }> }) {
  const { saved = "" } = await searchParams;
  const { contractor, mayEdit } = await showAs("job.view", async ({ organizations }, actor) => ({
    contractor: contractorOf(await organizations.own()),
    mayEdit: can(actor, "organization.edit"),
  }));
  const letterhead = letterheadOf(contractor, "crew-sheet");
  return (
    <div className={styles.page}>
      <p className={styles.over}>
        <Link href="/jobs">Jobs</Link>
      </p>
      <h1>Your firm</h1>
      <p className={styles.lead}>How homeowners and crews meet you on every paper, and what your jobs are made with.</p>
      {SAVED[saved] ? <Notice kind="good" title={SAVED[saved]} isLive /> : null}
      <ul className={styles.more}>
        {PARTS.map(({ href, title, says }) => (
          <li key={href}>
            <Link href={href}>
              <strong>{title}</strong>
              <span>{says}</span>
            </Link>
          </li>
        ))}
      </ul>
      <h2>On your papers</h2>
      {letterhead ? <LetterheadSample letterhead={letterhead} /> : null}
      {mayEdit ? (
        <>
          <LogoForm hasLogo={contractor.logo !== undefined} />
          <FirmForm first={firmDraftOf(contractor)} />
        </>
      ) : (
        <p>The owner of the firm can change this.</p>
      )}
    </div>
  );
}
