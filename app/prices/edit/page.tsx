import type { Metadata } from "next";
import Link from "next/link";
import { Notice } from "#app/design/notice.tsx";
import { showAs } from "#app/jobs/session.ts";
import { DEMO_PRICE_BOOK } from "#lib/scope/demo-price-book.ts";
import { draftOf } from "../price-draft.ts";
import { PriceForm } from "../price-form.tsx";
import styles from "../prices.module.css";

export const metadata: Metadata = { title: "Change the prices" };

/** The newest version in a form; before the first one the invented book stands in it. */
export default async function EditPricesPage() {
  const { newest, name } = await showAs("price-book.edit", async ({ priceBooks }, actor) => ({
    newest: (await priceBooks.list())[0],
    name: actor.organizationName,
  }));
  const today = new Date().toLocaleDateString("en-CA");
  const book = newest?.book ?? { ...DEMO_PRICE_BOOK, title: `Prices of ${name}`, rebates: [] };
  return (
    <div className={styles.page}>
      <p className={styles.over}>
        <Link href="/prices">Prices</Link>
      </p>
      <h1>{newest ? "Change the prices" : "Enter your prices"}</h1>
      {newest ? (
        <p className={styles.lead}>
          Saving makes version {newest.version + 1}. Proposals that are out keep the prices they were issued with.
        </p>
      ) : (
        <Notice kind="doubt" title="The figures in this form are invented">
          They show what belongs where. Put your own in place of each before you quote.
        </Notice>
      )}
      <PriceForm first={draftOf(book, today)} onVersion={newest?.version ?? 0} />
    </div>
  );
}
