import type { JobState } from "#lib/store/repositories/jobs.ts";

/** Where a job stands, as the office says it. */
export const JOB_STATE_WORDS: Readonly<Record<JobState, string>> = {
  draft: "Being measured",
  proposed: "Proposal is out",
  accepted: "Accepted",
  declined: "Declined",
  sealed: "Work done",
  verified: "Verified by retest",
  closed: "Closed",
};

export const JOB_STATES = Object.keys(JOB_STATE_WORDS) as readonly JobState[];

export const isJobState = (text: string | undefined): text is JobState =>
  text !== undefined && Object.hasOwn(JOB_STATE_WORDS, text);
