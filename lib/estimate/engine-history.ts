/** One version of the calculation and what it made different from the one before it. */
export interface EngineChange {
  version: string;
  date: string;
  what: string;
  /** Which figures of a claim may differ; none when only words or single rare jobs did. */
  touches: readonly ("leakage" | "distribution" | "energy" | "savings" | "ranges")[];
}

/** Every version that may have issued a claim, oldest first. The last is the one that runs. */
export const ENGINE_HISTORY: readonly EngineChange[] = [
  { version: "1.0.0", date: "2026-11-25", what: "The first.", touches: [] },
  {
    version: "1.1.0",
    date: "2026-11-25",
    what: "What ducts in the rooms give back is no longer credited to cycling as well.",
    touches: ["distribution", "energy", "savings", "ranges"],
  },
  {
    version: "1.2.0",
    date: "2026-11-25",
    what: "The need of the rooms comes from the bills where there are enough, and use is never above them.",
    touches: ["energy", "savings", "ranges"],
  },
  {
    version: "1.2.1",
    date: "2026-11-25",
    what: "A heat pump whose ducts bring nothing to the rooms has an answer where use is known.",
    touches: ["energy", "savings", "ranges"],
  },
  {
    version: "1.2.2",
    date: "2026-11-25",
    what: "A draw whose leaks pass seven tenths of the fan flow is held there instead of ending the estimate.",
    touches: ["ranges"],
  },
  {
    version: "1.3.0",
    date: "2026-11-28",
    what: "A reading outside its restrictor's span has a tenth more doubt.",
    touches: ["leakage", "distribution", "energy", "savings", "ranges"],
  },
  {
    version: "1.4.0",
    date: "2026-11-28",
    what:
      "Leaked air trades with its place, moisture counts as far as the coil takes it out, both leakage tests tell what " +
      "reaches outside, and the doubt of the calculation itself is drawn.",
    touches: ["leakage", "distribution", "energy", "savings", "ranges"],
  },
  {
    version: "1.4.1",
    date: "2026-11-28",
    what: "Stages of cooling, which change no number, are no longer listed as assumed.",
    touches: [],
  },
  {
    version: "1.5.0",
    date: "2026-11-28",
    what:
      "Seasons come from bills with what is known of any household and of the equipment on the meter; a place is as cold as " +
      "what comes back from it says; rooms in dry climates are dry; strips run during defrost; the need by the building " +
      "and the accuracy of a fan are as doubtful as they are. Where a target is out of reach, the work that is worth most " +
      "beyond its price is advised instead of what comes closest.",
    touches: ["leakage", "distribution", "energy", "savings", "ranges"],
  },
  {
    version: "1.6.0",
    date: "2026-11-28",
    what:
      "A blower-door subtraction that cannot be told from none is no measurement, and one that can is freed from the bias " +
      "of telling only what chance made large.",
    touches: ["leakage", "distribution", "energy", "savings", "ranges"],
  },
  {
    version: "1.7.0",
    date: "2026-11-28",
    what:
      "An air conditioner gives less and takes more the hotter it is outdoors; equipment with stages has its ducts at the " +
      "low stage too; a mean infiltration that is told counts in the heat loss of the house; other measures count one by " +
      "one, on the hottest afternoons too. New duct closes the leaks told to be on its run; a joint of a run comes after " +
      "the run itself; a hairline that is sprayed is not sealed by hand as well. Staged checks follow the crew's walk.",
    touches: ["distribution", "energy", "savings", "ranges"],
  },
];

/** What came after a version, oldest first; null when no such version is known. */
export function changesSince(version: string): readonly EngineChange[] | null {
  const at = ENGINE_HISTORY.findIndex((each) => each.version === version);
  return at < 0 ? null : ENGINE_HISTORY.slice(at + 1);
}
