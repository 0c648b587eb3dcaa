import type { Metadata } from "next";
import Link from "next/link";
import { LinkButton } from "#app/design/button.tsx";
import { Notice } from "#app/design/notice.tsx";
import { showAs } from "#app/jobs/session.ts";
import { can } from "#lib/access/can.ts";
import { PriceHistory } from "./price-history.tsx";
import { PriceSamples } from "./price-samples.tsx";
import { PriceTables } from "./price-tables.tsx";
import styles from "./prices.module.css";

export const metadata: Metadata = { title: "Prices" };

/** The prices in force, what they come to, and every version there was. */
export default async function PricesPage() {
  const now = new Date();
  const { versions, current, members, organizationName, mayEdit } = await showAs(
    "price-book.view",
    async ({ priceBooks, organizations }, actor) => ({
      versions: await priceBooks.list(),
      current: await priceBooks.inForceOn(now),
      members: await organizations.members(),
      organizationName: actor.organizationName,
      mayEdit: can(actor, "price-book.edit"),
    }),
  );
  const coming = versions.find(({ effectiveOn }) => effectiveOn > now);
  return (
    <div className={styles.page}>
      <header className={styles.head}>
        <div>
          <p className={styles.over}>
            <Link href="/jobs">{organizationName}</Link>
          </p>
          <h1>Prices</h1>
        </div>
        {mayEdit && versions.length > 0 ? <LinkButton href="/prices/edit">Change the prices</LinkButton> : null}
      </header>
      {current ? (
        <>
          <p className={styles.lead}>
            {current.book.title}, version {current.version}. A job takes these prices until it has prices of its own; an
            issued proposal keeps those it was issued with.
          </p>
          {coming ? (
            <Notice kind="info" title={`Version ${coming.version} comes into force on ${coming.book.issuedOn}`}>
              Until then version {current.version} holds.
            </Notice>
          ) : null}
          <PriceSamples book={current.book} />
          <PriceTables book={current.book} />
        </>
      ) : (
        <Notice
          kind="info"
          title={coming ? `Your first prices come into force on ${coming.book.issuedOn}` : "No prices of your own yet"}
          actions={mayEdit ? <LinkButton href="/prices/edit">Enter your prices</LinkButton> : undefined}
        >
          Until then every job is priced with invented figures, and says so. The form starts from them, so that you only
          change numbers.
        </Notice>
      )}
      {versions.length > 0 ? <PriceHistory versions={versions} members={members} /> : null}
    </div>
  );
}
