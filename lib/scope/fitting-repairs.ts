import { GAP_WIDTH_IN, LEAK_KINDS } from "#lib/job/leak-kinds.ts";
import type { LeakSite, Reach } from "#lib/job/leak-site.ts";
import type { PlaceKind } from "#lib/job/place.ts";
import type { Feet, Hours, Inches } from "#lib/units/quantity.ts";
import type { MaterialUse } from "./price-lines.ts";
import type { Repair, RepairCatalogue } from "./repair-schema.ts";

const INCHES_PER_FOOT = 12;

/** How hard a place usually is to work in, where nobody said. Source: practice. */
export const USUAL_REACH: Readonly<Record<PlaceKind, Reach>> = {
  conditioned: "easy",
  garage: "easy",
  basement: "easy",
  outside: "easy",
  attic: "moderate",
  "joist-space": "moderate",
  "unvented-crawlspace": "moderate",
  "vented-crawlspace": "hard",
  belly: "hard",
  "below-slab": "hard",
};

export type SizedSite = Pick<LeakSite, "kind" | "size" | "isSuspectedAsbestos">;

/** Width of the gap as far as it is known; "open" when there is no gap but an opening. */
function gapWidth({ kind, size }: SizedSite): Inches | "open" {
  if (size?.from === "gap") return size.gapWidthIn;
  const band = size?.from === "band" ? size.band : LEAK_KINDS[kind].usualBand;
  return band === "fully-open" ? "open" : GAP_WIDTH_IN[band];
}

/** Whether a gap is known or taken to be no wider than this. */
export function isNarrow(site: SizedSite, widestIn: Inches | undefined): boolean {
  const width = gapWidth(site);
  return widestIn !== undefined && width !== "open" && width <= widestIn;
}

/** Length of the joint to be sealed: as measured, else as usual for the kind. */
function gapLengthFt({ kind, size }: SizedSite): Feet {
  const lengthIn = size?.from === "gap" ? size.gapLengthIn : LEAK_KINDS[kind].gapLengthIn;
  return lengthIn / INCHES_PER_FOOT;
}

/**
 * The repairs of a catalogue that fit a leak: right kind, gap not too wide. None where asbestos is suspected: the work
 * stops and licensed people come first. Whole-system repairs are listed with the leaks they reach.
 */
export function fittingRepairs({ catalogue, site }: { catalogue: RepairCatalogue; site: SizedSite }): Repair[] {
  if (site.isSuspectedAsbestos) return [];
  return catalogue.repairs.filter(
    ({ fits, widestGapIn }) => fits.includes(site.kind) && (widestGapIn === undefined || isNarrow(site, widestGapIn)),
  );
}

/** Materials of one repair at one leak, before waste. */
export function materialsOf(repair: Repair, site: SizedSite | null): MaterialUse[] {
  const lengths = { leak: 1, system: 1, "gap-foot": site ? gapLengthFt(site) : 0, "run-foot": repair.runLengthFt ?? 0 };
  return repair.materials
    .map(({ materialId, amount, per }) => ({ materialId, amount: amount * lengths[per] }))
    .filter(({ amount }) => amount > 0);
}

/** Person hours of one repair. */
export const labourOf = (repair: Repair, reach: Reach): Hours => repair.labourHours[reach];
