import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { showAs } from "#app/jobs/session.ts";
import { PriceSamples } from "../price-samples.tsx";
import { PriceTables } from "../price-tables.tsx";
import styles from "../prices.module.css";

export const metadata: Metadata = { title: "Prices as they were" };

/** One version of the prices, as it was. */
export default async function PriceVersionPage({ params }: { params: Promise<{ version: string }> }) {
  const { version } = await params;
  if (!/^[1-9]\d{0,8}$/.test(version)) notFound();
  const { book, createdAt } = await showAs("price-book.view", ({ priceBooks }) => priceBooks.find(Number(version)));
  return (
    <div className={styles.page}>
      <p className={styles.over}>
        <Link href="/prices">Prices</Link>
      </p>
      <h1>
        {book.title}, version {version}
      </h1>
      <p className={styles.lead}>
        In force from {book.issuedOn}; saved on {createdAt.toLocaleDateString("en-US", { dateStyle: "medium" })}.
      </p>
      <PriceSamples book={book} />
      <PriceTables book={book} />
    </div>
  );
}
