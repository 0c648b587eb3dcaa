import Link from "next/link";
import { Notice } from "#app/design/notice.tsx";
import type { Contractor } from "#lib/documents/contractor.ts";

/** What a paper would have to leave open, because the firm has not said it yet. */
export function openPromises({ missedGoal, paymentTerms, license }: Contractor): string[] {
  return [
    ...(missedGoal ? [] : ["what happens if the second test misses the goal"]),
    ...(paymentTerms ? [] : ["how and when it is paid"]),
    ...(license ? [] : ["your license, where one is required"]),
  ];
}

/** Said before a paper is issued, for an issued paper does not change any more. */
export function OpenPromises({ contractor }: { contractor: Contractor }) {
  const open = openPromises(contractor);
  if (open.length === 0) return null;
  return (
    <Notice kind="doubt" title="Your papers do not say it all yet">
      A homeowner will ask: {new Intl.ListFormat("en-US", { type: "conjunction" }).format(open)}. The paper says so as
      long as it is open. <Link href="/organization">Write it once for all papers</Link>.
    </Notice>
  );
}
