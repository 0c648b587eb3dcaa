"use server";

import { redirect } from "next/navigation";
import { actAs } from "#app/jobs/session.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { isoDateSchema } from "#lib/job/identity.ts";
import type { PriceDraft } from "./price-draft.ts";
import { type PriceProblem, readPriceDraft } from "./read-price-draft.ts";

export interface SavePricesReply {
  problems: readonly PriceProblem[];
  /** Somebody else saved first: nothing was kept of this one. */
  conflict?: string;
}

/** Keeps the prices that were typed as the next version. */
export async function savePrices({
  draft,
  onVersion,
}: {
  draft: PriceDraft;
  onVersion: number;
}): Promise<SavePricesReply> {
  const read = readPriceDraft(draft);
  const date = isoDateSchema.safeParse(draft.effectiveOn.trim());
  const dated = date.success
    ? []
    : [{ fieldId: "effectiveOn", text: "In force from: enter a date as year-month-day, such as 2027-01-15" }];
  if ("problems" in read) return { problems: [...dated, ...read.problems] };
  if (!date.success) return { problems: dated };
  try {
    await actAs("price-book.edit", async ({ priceBooks, audit }) => {
      const { version } = await priceBooks.add({
        onVersion,
        effectiveOn: new Date(`${date.data}T00:00:00Z`),
        book: read.book,
      });
      await audit.record({ action: "price-book.changed", subjectKind: "price-book", subjectId: String(version) });
    });
  } catch (thrown) {
    if (thrown instanceof InputProblem && thrown.code === "conflict") {
      return { problems: [], conflict: thrown.message };
    }
    throw thrown;
  }
  redirect("/prices");
}
