/** For whom a unit of work acts. Row-level security sees exactly this. */
export interface Identity {
  organizationId: string;
  /** The person; null when a homeowner acts, who has no account. */
  actorId: string | null;
  /** Set when somebody came by a proposal's link: nothing else of the organization is in sight then. */
  proposalId?: string;
}
