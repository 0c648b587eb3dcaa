/** What a check found worth a look. */
export interface FlagEvidence {
  /** JSON Pointer into the claim, or the reference of another claim. */
  path: string;
  says: string;
}

/** Something a reviewer may want to ask about: what was seen, and how it may well have come about. Never a verdict. */
export interface ClaimFlag {
  code: FlagCode;
  evidence: readonly FlagEvidence[];
}

interface FlagWords {
  title: string;
  /** How it may have come about without anything being wrong. */
  innocentExplanation: string;
}

/** Every check of a claim, in the words that the reviewer and the contractor both read. */
export const FLAGS = {
  "evidence-missing": {
    title: "Some evidence is not in the packet",
    innocentExplanation: "It may have been recorded elsewhere, or left out by hand; the contractor can add it.",
  },
  "readings-not-in-file": {
    title: "The leakage came without the readings behind it",
    innocentExplanation:
      "HPXML keeps what a test found, not its readings, fan or restrictor; the contractor has them on the test sheet.",
  },
  "savings-not-of-file": {
    title: "The file claims another saving than follows from its own house and leakage",
    innocentExplanation:
      "Whoever made the file knew more than the standard carries: leaks one by one, bills, airflow; and other programs work with other weather and hours.",
  },
  "to-outside-above-total": {
    title: "Leakage to outside reads above total leakage",
    innocentExplanation:
      "Wind between the two tests, a door left open or a restrictor noted wrongly does this; the part cannot exceed the whole.",
  },
  "exponent-unusual": {
    title: "The curve through the steps has an exponent that leaks rarely have",
    innocentExplanation: "Gusts, a flap that moved or one misread step bends the curve.",
  },
  "fan-pressure-outside-span": {
    title: "The fan ran outside the span of its calibration",
    innocentExplanation: "The next restrictor may not have been at hand, or its name was noted wrongly.",
  },
  "fan-flow-against-capacity": {
    title: "The blower's flow does not go with the cooling capacity",
    innocentExplanation: "A replaced blower, a shared plenum or a nameplate misread by one size explains it.",
  },
  "leakage-above-fan-flow": {
    title: "More air leaks than the blower moves",
    innocentExplanation: "A run that had come off reads so under test pressure; or the fan flow was estimated too low.",
  },
  "saved-above-used": {
    title: "More is saved than was used",
    innocentExplanation: "The known use may be of a mild year, or of one fuel only.",
  },
  "premise-claimed-twice": {
    title: "The same premise was claimed within the last twelve months",
    innocentExplanation:
      "A second system of the same house, a corrected claim or two units at one address look like this.",
  },
  "earlier-measure-at-premise": {
    title: "Ducts of this premise were sealed before, within the measure's life",
    innocentExplanation: "New leaks, a new system or a part that was not sealed then are good reasons to seal again.",
  },
  "photos-used-twice": {
    title: "A photo stands in another claim too",
    innocentExplanation: "A wrong file is easily picked; a photo of shared equipment belongs to both.",
  },
  "readings-used-twice": {
    title: "All readings equal those of another claim",
    innocentExplanation:
      "Two like houses of one builder can read alike to the last digit when there are few steps; a job may also have been copied as a start.",
  },
  "times-impossible": {
    title: "The times do not fit together",
    innocentExplanation: "A clock set wrongly, a date typed by hand or a test entered later explains it.",
  },
  "instrument-in-two-places": {
    title: "One instrument was at two places at nearly the same time",
    innocentExplanation: "Two instruments of one name, or times entered later and rounded, look like this.",
  },
  "instrument-out-of-calibration": {
    title: "An instrument was used outside its calibration dates",
    innocentExplanation: "The new papers may not have been entered yet.",
  },
} as const satisfies Record<string, FlagWords>;

export type FlagCode = keyof typeof FLAGS;

/** A flag when there is anything to show, else nothing. */
export function flag(code: FlagCode, evidence: readonly FlagEvidence[]): ClaimFlag[] {
  return evidence.length > 0 ? [{ code, evidence }] : [];
}
