export type ReachNodeId =
  | "film-off"
  | "way-open"
  | "torn-run"
  | "restrictor-too-small"
  | "fan-too-small"
  | "cover-again"
  | "close-it"
  | "found-fault"
  | "wider-restrictor"
  | "larger-fan"
  | "highest-steady";

/** What to do when the ducts do not come up to their target, as questions with two answers. Source: practice. */
export interface ReachQuestion {
  kind: "question";
  question: string;
  how: string;
  yes: ReachNodeId;
  no: ReachNodeId;
}

/** The end of the way: a fault to mend and test again, or a value that is kept and marked. */
export interface ReachOutcome {
  kind: "test-again" | "extrapolate";
  title: string;
  nextMove: string;
}

export const FIRST_REACH_QUESTION: ReachNodeId = "film-off";

export const REACH_TREE: Readonly<Record<ReachNodeId, ReachQuestion | ReachOutcome>> = {
  "film-off": {
    kind: "question",
    question: "Has any cover come off?",
    how: "With the fan running, walk past every register and feel for air. Count them.",
    yes: "cover-again",
    no: "way-open",
  },
  "way-open": {
    kind: "question",
    question: "Is a duct, damper or access panel open?",
    how: "Filter slot, blower door, outdoor-air intake, the joint where the fan is taped on.",
    yes: "close-it",
    no: "torn-run",
  },
  "torn-run": {
    kind: "question",
    question: "Do you find a run torn off or a piece missing?",
    how: "Follow the sound and the air in attic, crawlspace and basement, the fan at full speed.",
    yes: "found-fault",
    no: "restrictor-too-small",
  },
  "restrictor-too-small": {
    kind: "question",
    question: "Does the fan stand at full speed with a flow restrictor in it?",
    how: "Fan pressure above the restrictor's span is the sign.",
    yes: "wider-restrictor",
    no: "fan-too-small",
  },
  "fan-too-small": {
    kind: "question",
    question: "Have you a larger fan at hand, such as the house fan with an adapter?",
    how: "It needs a calibration of its own for this use.",
    yes: "larger-fan",
    no: "highest-steady",
  },
  "cover-again": {
    kind: "test-again",
    title: "A cover was off",
    nextMove: "Cover it with adhesive film and test again.",
  },
  "close-it": {
    kind: "test-again",
    title: "A way was open that is no leak",
    nextMove: "Close it and test again.",
  },
  "found-fault": {
    kind: "test-again",
    title: "A large leak found",
    nextMove: "Add it to the leak walk. Note the highest steady pressure first, then test again after it is closed.",
  },
  "wider-restrictor": {
    kind: "test-again",
    title: "The flow restrictor was too small",
    nextMove: "Fit the next wider one, note the change with the step, test again.",
  },
  "larger-fan": { kind: "test-again", title: "The fan was too small", nextMove: "Change the fan and test again." },
  "highest-steady": {
    kind: "extrapolate",
    title: "25 Pa is out of reach",
    nextMove: "Note the highest steady pressure and its flow. The result is carried up to 25 Pa and stays marked.",
  },
};
