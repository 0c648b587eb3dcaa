import type { Metadata } from "next";
import { QuickLook } from "./quick-look.tsx";

export const metadata: Metadata = { title: "Quick look" };

/** Five questions on one page, and the answer beside them. */
export default function QuickLookPage() {
  return <QuickLook today={new Date().toLocaleDateString("en-CA")} />;
}
