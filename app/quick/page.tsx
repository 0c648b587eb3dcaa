import type { Metadata } from "next";
import { unitSystem } from "../units/unit-system.ts";
import { QuickLook } from "./quick-look.tsx";

export const metadata: Metadata = { title: "Quick look" };

/** Five questions on one page, and the answer beside them. */
export default async function QuickLookPage() {
  const units = await unitSystem();
  return <QuickLook today={new Date().toLocaleDateString("en-CA")} units={units} />;
}
