import { orificeFlow } from "#lib/air/orifice-area.ts";
import type { Cfm, Inches, Ratio, Share, SquareInches } from "#lib/units/quantity.ts";

/** What leaks. The ids are the vocabulary of jobs, repairs and documents; never rename one. */
export const LEAK_KIND_IDS = [
  "disconnected-run",
  "plenum-joint",
  "air-handler-cabinet",
  "filter-slot",
  "boot-to-drywall",
  "take-off",
  "panned-joist-return",
  "platform-return",
  "flexible-connection",
  "seam",
  "cracked-board",
  "damaged-run",
  "building-cavity",
  "missing-end-cap",
  "crossover",
  "belly",
  "other",
] as const;
export type LeakKindId = (typeof LEAK_KIND_IDS)[number];

/** Where along the ducts a kind of leak sits, which decides the pressure behind it while the system runs. */
export const PRESSURE_GROUPS = {
  /** Cabinet and plenum: the whole plenum static pressure. Source: practice. */
  "cabinet-or-plenum": 1,
  trunk: 0.7,
  "take-off": 0.5,
  boot: 0.1,
} as const satisfies Record<string, Share>;
export type PressureGroup = keyof typeof PRESSURE_GROUPS;

/** How wide the gap looks. Only "fully-open" is a hole and not a gap: there the opening of the kind counts. */
export const SIZE_BANDS = ["hairline", "pencil-wide", "finger-wide", "hand-wide", "fully-open"] as const;
export type SizeBand = (typeof SIZE_BANDS)[number];

/** Width of a gap as the eye names it. Source: practice. */
export const GAP_WIDTH_IN: Readonly<Record<Exclude<SizeBand, "fully-open">, Inches>> = {
  hairline: 1 / 32,
  "pencil-wide": 1 / 4,
  "finger-wide": 3 / 4,
  "hand-wide": 3,
};

/** Leakage is compared at this pressure. */
const REFERENCE_PRESSURE_PA = 25;

/** Half of what was looked at may well be double or half of the band: doubt of a size judged by eye. Source: practice. */
export const BAND_DOUBT_RATIO: Ratio = 0.6;
/** A gap measured with a tape: its ends and its middle differ, and so does its discharge. Source: practice. */
export const MEASURED_GAP_DOUBT_RATIO: Ratio = 0.35;
/** Nothing said about the size: the kind alone speaks. Source: practice. */
export const UNKNOWN_SIZE_DOUBT_RATIO: Ratio = 1;

export interface LeakKind {
  id: LeakKindId;
  /** As a homeowner reads it. */
  label: string;
  /** As the trade says it. */
  tradeDescription: string;
  pressureGroup: PressureGroup;
  /** How long a gap of this kind usually runs. Source: practice. */
  gapLengthIn: Inches;
  /** The whole opening when it is fully open. Source: practice. */
  openAreaIn2: SquareInches;
  /** The band taken when nothing is said about the size. Source: practice. */
  usualBand: SizeBand;
}

/**
 * The kinds of leak as data. Every dimension is common trade practice from memory (source: practice), stated so that
 * an organization can replace it; the doubt that goes with it is wide on purpose.
 */
export const LEAK_KINDS: Readonly<Record<LeakKindId, LeakKind>> = {
  "disconnected-run": {
    id: "disconnected-run",
    label: "A duct that has come off",
    tradeDescription:
      "Run pulled off its collar, boot or take-off; the whole branch blows into, or draws from, the place around it",
    pressureGroup: "take-off",
    gapLengthIn: 22,
    openAreaIn2: 38,
    usualBand: "fully-open",
  },
  "plenum-joint": {
    id: "plenum-joint",
    label: "Gap where the main box joins the furnace or air handler",
    tradeDescription: "Plenum to air handler, coil case or trunk: unsealed slip, drive or board joint",
    pressureGroup: "cabinet-or-plenum",
    gapLengthIn: 40,
    openAreaIn2: 30,
    usualBand: "hairline",
  },
  "air-handler-cabinet": {
    id: "air-handler-cabinet",
    label: "Gaps in the furnace or air handler cabinet",
    tradeDescription: "Panels, knockouts, line-set and drain entries of the cabinet",
    pressureGroup: "cabinet-or-plenum",
    gapLengthIn: 60,
    openAreaIn2: 12,
    usualBand: "hairline",
  },
  "filter-slot": {
    id: "filter-slot",
    label: "Open slot at the filter",
    tradeDescription: "Filter rack without a cover or with a loose one, on the suction side",
    pressureGroup: "cabinet-or-plenum",
    gapLengthIn: 22,
    openAreaIn2: 22,
    usualBand: "pencil-wide",
  },
  "boot-to-drywall": {
    id: "boot-to-drywall",
    label: "Gap around a register box",
    tradeDescription: "Boot to ceiling drywall, wall or subfloor, and the boot's own corners",
    pressureGroup: "boot",
    gapLengthIn: 32,
    openAreaIn2: 12,
    usualBand: "hairline",
  },
  "take-off": {
    id: "take-off",
    label: "Gap where a branch leaves the main duct",
    tradeDescription: "Collar or take-off to trunk or plenum: tabs bent, no sealant",
    pressureGroup: "take-off",
    gapLengthIn: 22,
    openAreaIn2: 14,
    usualBand: "hairline",
  },
  "panned-joist-return": {
    id: "panned-joist-return",
    label: "Floor joists used as a return duct",
    tradeDescription: "Joist bay closed with sheet metal or board, open at blocking, plates and bay ends",
    pressureGroup: "trunk",
    gapLengthIn: 96,
    openAreaIn2: 60,
    usualBand: "pencil-wide",
  },
  "platform-return": {
    id: "platform-return",
    label: "Hollow platform under the furnace used as a return",
    tradeDescription: "Framed return platform, open to wall cavities, floor or crawlspace",
    pressureGroup: "cabinet-or-plenum",
    gapLengthIn: 72,
    openAreaIn2: 60,
    usualBand: "pencil-wide",
  },
  "flexible-connection": {
    id: "flexible-connection",
    label: "Loose end of a flexible duct",
    tradeDescription: "Flexible duct core to collar or sleeve without a drawband or sealant",
    pressureGroup: "take-off",
    gapLengthIn: 22,
    openAreaIn2: 20,
    usualBand: "hairline",
  },
  seam: {
    id: "seam",
    label: "Open seam along a metal duct",
    tradeDescription: "Longitudinal or transverse seam of trunk or branch, unsealed",
    pressureGroup: "trunk",
    gapLengthIn: 60,
    openAreaIn2: 15,
    usualBand: "hairline",
  },
  "cracked-board": {
    id: "cracked-board",
    label: "Cracked or peeling duct board",
    tradeDescription: "Fibrous glass duct board: crushed corner, failed closure tape, cracked facing",
    pressureGroup: "trunk",
    gapLengthIn: 24,
    openAreaIn2: 24,
    usualBand: "pencil-wide",
  },
  "damaged-run": {
    id: "damaged-run",
    label: "Torn or crushed duct",
    tradeDescription: "Flexible run torn, chewed or rotted; metal run rusted through",
    pressureGroup: "take-off",
    gapLengthIn: 14,
    openAreaIn2: 38,
    usualBand: "finger-wide",
  },
  "building-cavity": {
    id: "building-cavity",
    label: "Wall or ceiling space used as a duct",
    tradeDescription: "Stud bay, chase or dropped ceiling that carries air without a duct inside",
    pressureGroup: "trunk",
    gapLengthIn: 96,
    openAreaIn2: 60,
    usualBand: "pencil-wide",
  },
  "missing-end-cap": {
    id: "missing-end-cap",
    label: "Main duct open at its end",
    tradeDescription: "Trunk end cap missing, fallen off or never sealed",
    pressureGroup: "trunk",
    gapLengthIn: 44,
    openAreaIn2: 112,
    usualBand: "pencil-wide",
  },
  crossover: {
    id: "crossover",
    label: "Duct that joins the two halves of a manufactured home",
    tradeDescription: "Crossover duct under the home: collar loose, run torn, or lying on the ground",
    pressureGroup: "trunk",
    gapLengthIn: 38,
    openAreaIn2: 100,
    usualBand: "pencil-wide",
  },
  belly: {
    id: "belly",
    label: "Leaks inside the belly of a manufactured home",
    tradeDescription: "Trunk seams, boots and end caps inside the belly, seen through torn belly board",
    pressureGroup: "trunk",
    gapLengthIn: 60,
    openAreaIn2: 60,
    usualBand: "hairline",
  },
  other: {
    id: "other",
    label: "Another leak",
    tradeDescription: "A leak of another kind, described in the note",
    pressureGroup: "take-off",
    gapLengthIn: 24,
    openAreaIn2: 20,
    usualBand: "hairline",
  },
};

/**
 * Leakage at 25 Pa that a kind of leak has at a size seen by eye.
 * Q = 1.06 √25 A, A = gap length × gap width, or the whole opening. Valid as a first guess before any measurement is
 * reconciled. Source: hpxml-docs for the flow, practice for the dimensions. Left out: bends and filters behind the gap.
 */
export function leakageOfBand(kind: LeakKindId, band: SizeBand = LEAK_KINDS[kind].usualBand): Cfm {
  const { gapLengthIn, openAreaIn2 } = LEAK_KINDS[kind];
  const areaIn2 = band === "fully-open" ? openAreaIn2 : Math.min(gapLengthIn * GAP_WIDTH_IN[band], openAreaIn2);
  return orificeFlow({ areaIn2, pressurePa: REFERENCE_PRESSURE_PA }).leakageCfm;
}
