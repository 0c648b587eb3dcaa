import type { Citation } from "#lib/sources/source.ts";

/** What a rule limits, and by what number. */
export type TargetLimit =
  | { kind: "per-floor-area"; cfm25Per100Ft2: number }
  | { kind: "share-of-airflow"; airflowShare: number }
  /** Removed, of what leaked before the work. */
  | { kind: "reduction"; reductionShare: number };

/** When a test counts for a rule: while the ducts are still open to see, or at the end. */
export type TargetStage = "rough-in" | "finished";

/** One limit of one edition, as data. The text adopted at the place of the house governs. */
export interface TargetRule {
  id: string;
  title: string;
  family: "new-ducts" | "altered-ducts";
  edition: string;
  stage: TargetStage;
  /** Which leakage it limits. */
  measure: "total" | "to-outside";
  limit: TargetLimit;
  /** Holds only with, or only without, the air handler in the test; undefined: either way. */
  hasAirHandler?: boolean;
  /** Holds only for ducts wholly inside, or only for others; undefined: for both. */
  ductsWhollyInside?: boolean;
  /** Rules of one group are alternatives: meeting one of them is enough. */
  alternativesGroup: string;
  source: Citation;
  note?: string;
}

const ADOPTED = "The adopted local text governs.";
const secondHand = (section: string): Citation => ({ sourceId: "iecc", locator: `${section}, second-hand` });
const remembered = (section: string): Citation => ({ sourceId: "iecc", locator: `${section}, from memory` });

const MODERN_SECTION = "R403.3, duct leakage";

/** 2012 and later: 4 cfm25 per 100 ft² in all, at rough-in 3 when the air handler is not in yet. */
function modernEdition(edition: string, cite: (section: string) => Citation, note: string): TargetRule[] {
  const common = {
    family: "new-ducts",
    edition,
    measure: "total",
    alternativesGroup: `iecc-${edition}`,
    source: cite(MODERN_SECTION),
    note,
  } as const;
  // Only 2021 and later ask for a test, with its own limit, of ducts that are wholly inside.
  const part = Number(edition) >= 2021 ? { ductsWhollyInside: false } : {};
  return [
    {
      ...common,
      ...part,
      id: `iecc-${edition}-total`,
      title: `IECC ${edition}, total leakage, finished`,
      stage: "finished",
      limit: { kind: "per-floor-area", cfm25Per100Ft2: 4 },
    },
    {
      ...common,
      ...part,
      id: `iecc-${edition}-rough-in`,
      title: `IECC ${edition}, total leakage at rough-in, air handler in place`,
      stage: "rough-in",
      hasAirHandler: true,
      limit: { kind: "per-floor-area", cfm25Per100Ft2: 4 },
    },
    {
      ...common,
      ...part,
      id: `iecc-${edition}-rough-in-without-air-handler`,
      title: `IECC ${edition}, total leakage at rough-in, without air handler`,
      stage: "rough-in",
      hasAirHandler: false,
      limit: { kind: "per-floor-area", cfm25Per100Ft2: 3 },
    },
  ];
}

/** Ducts wholly inside the pressure and thermal boundary: 8 cfm25 per 100 ft². */
function whollyInside(edition: string, cite: (section: string) => Citation, note: string): TargetRule {
  return {
    id: `iecc-${edition}-wholly-inside`,
    title: `IECC ${edition}, total leakage, ducts wholly inside`,
    family: "new-ducts",
    edition,
    stage: "finished",
    measure: "total",
    ductsWhollyInside: true,
    limit: { kind: "per-floor-area", cfm25Per100Ft2: 8 },
    alternativesGroup: `iecc-${edition}`,
    source: cite(MODERN_SECTION),
    note,
  };
}

const FIRST_EDITION = {
  family: "new-ducts",
  edition: "2009",
  source: secondHand("403.2.2"),
  note: ADOPTED,
} as const;

const ALTERED = {
  family: "altered-ducts",
  edition: "2008",
  stage: "finished",
  alternativesGroup: "altered-ducts-2008",
  source: { sourceId: "state-altered-ducts-2008" },
} as const satisfies Partial<TargetRule>;

const NOTE_2024 =
  "From memory: the 2024 text sets limits by the number of ducted returns; these are its stricter ones. The adopted local text governs.";

/** Dated limits; programs and users add theirs. */
export const TARGET_RULES: readonly TargetRule[] = [
  {
    ...FIRST_EDITION,
    id: "iecc-2009-total",
    title: "IECC 2009, total leakage, finished",
    stage: "finished",
    measure: "total",
    limit: { kind: "per-floor-area", cfm25Per100Ft2: 12 },
    alternativesGroup: "iecc-2009",
  },
  {
    ...FIRST_EDITION,
    id: "iecc-2009-to-outside",
    title: "IECC 2009, leakage to outside, finished",
    stage: "finished",
    measure: "to-outside",
    limit: { kind: "per-floor-area", cfm25Per100Ft2: 8 },
    alternativesGroup: "iecc-2009",
  },
  {
    ...FIRST_EDITION,
    id: "iecc-2009-rough-in",
    title: "IECC 2009, total leakage at rough-in, air handler in place",
    stage: "rough-in",
    measure: "total",
    hasAirHandler: true,
    limit: { kind: "per-floor-area", cfm25Per100Ft2: 6 },
    alternativesGroup: "iecc-2009",
  },
  {
    ...FIRST_EDITION,
    id: "iecc-2009-rough-in-without-air-handler",
    title: "IECC 2009, total leakage at rough-in, without air handler",
    stage: "rough-in",
    measure: "total",
    hasAirHandler: false,
    limit: { kind: "per-floor-area", cfm25Per100Ft2: 4 },
    alternativesGroup: "iecc-2009",
  },
  ...modernEdition("2012", secondHand, ADOPTED),
  ...modernEdition("2015", secondHand, ADOPTED),
  ...modernEdition("2018", remembered, ADOPTED),
  ...modernEdition("2021", secondHand, ADOPTED),
  whollyInside("2021", secondHand, ADOPTED),
  ...modernEdition("2024", remembered, NOTE_2024),
  whollyInside("2024", remembered, NOTE_2024),
  {
    ...ALTERED,
    id: "altered-ducts-total",
    title: "Altered ducts, total leakage 15 % of the airflow",
    measure: "total",
    limit: { kind: "share-of-airflow", airflowShare: 0.15 },
    note: ADOPTED,
  },
  {
    ...ALTERED,
    id: "altered-ducts-to-outside",
    title: "Altered ducts, leakage to outside 10 % of the airflow",
    measure: "to-outside",
    limit: { kind: "share-of-airflow", airflowShare: 0.1 },
    note: ADOPTED,
  },
  {
    ...ALTERED,
    id: "altered-ducts-reduction",
    title: "Altered ducts, leakage 60 % less than before",
    measure: "total",
    limit: { kind: "reduction", reductionShare: 0.6 },
    note: `With a smoke check that all leaks within reach are sealed. ${ADOPTED}`,
  },
];
