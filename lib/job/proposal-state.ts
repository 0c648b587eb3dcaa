export type ProposalEventKind =
  | "sent"
  | "seen"
  | "asked"
  | "answered"
  | "accepted"
  | "declined"
  | "expired"
  | "withdrawn";

export interface ProposalEventRecord {
  kind: ProposalEventKind;
  payload: unknown;
  /** Null when the homeowner acted. */
  actorId: string | null;
  createdAt: Date;
}

export type ProposalState =
  | "issued"
  | "sent"
  | "seen"
  | "question-open"
  | "accepted"
  | "declined"
  | "expired"
  | "withdrawn"
  | "superseded";

/** Where a proposal stands: told by its events, never stored beside them. What was accepted stays accepted. */
export function proposalState({
  events,
  expiresAt,
  isSuperseded,
  now,
}: {
  events: readonly Pick<ProposalEventRecord, "kind">[];
  expiresAt: Date;
  isSuperseded: boolean;
  now: Date;
}): ProposalState {
  const kinds = events.map((event) => event.kind);
  const has = (kind: ProposalEventKind) => kinds.includes(kind);
  if (has("accepted")) return "accepted";
  if (has("declined")) return "declined";
  if (has("withdrawn")) return "withdrawn";
  if (isSuperseded) return "superseded";
  if (has("expired") || now >= expiresAt) return "expired";
  if (kinds.lastIndexOf("asked") > kinds.lastIndexOf("answered")) return "question-open";
  if (has("seen")) return "seen";
  return has("sent") ? "sent" : "issued";
}
