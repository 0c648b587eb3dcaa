import type { Contractor } from "../contractor.ts";
import type { DocumentView } from "../document-view.ts";
import { logoHref } from "./logo.ts";

/** The head of a firm's papers, and the color of what stands out on them. */
export interface Letterhead {
  name: string;
  /** License and how to reach the firm, where the paper does not say it anyway. */
  detail?: string;
  logoHref?: string;
  accentColor?: string;
}

/** The head for one kind of paper; a proposal tells license and address among its facts. */
export function letterheadOf(contractor: Contractor | undefined, kind: DocumentView["kind"]): Letterhead | undefined {
  if (contractor === undefined) return undefined;
  const { name, license, phone, email, logo, accentColor } = contractor;
  const detail = [license, phone, email].filter((part) => part !== undefined).join(" · ");
  return {
    name,
    ...(kind === "proposal" || detail === "" ? {} : { detail }),
    ...(logo ? { logoHref: logoHref(logo) } : {}),
    ...(accentColor ? { accentColor } : {}),
  };
}
