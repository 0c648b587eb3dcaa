import { StatGrid } from "#app/design/stat-block.tsx";
import type { PriceBook } from "#lib/job/price-book-schema.ts";
import { labourLine, setUpLines, sumOfLines, visitLine } from "#lib/scope/price-lines.ts";
import { formatUsdCents } from "#lib/units/format.ts";

/** What the customer pays for a few usual things, before tax: the quickest check of a whole price book. */
export function PriceSamples({ book }: { book: PriceBook }) {
  const attic = sumOfLines(setUpLines(book, "Attic", "attic"));
  return (
    <StatGrid
      stats={[
        {
          id: "hour",
          label: "One hour of one person sells at",
          value: formatUsdCents(labourLine(book, "", 1).amountUsdCents),
        },
        { id: "visit", label: "One visit of the crew", value: formatUsdCents(visitLine(book, "").amountUsdCents) },
        { id: "attic", label: "Setting up in an attic", value: formatUsdCents(attic) },
        { id: "least", label: "Least charge", value: formatUsdCents(book.minimumUsdCents) },
      ]}
    />
  );
}
