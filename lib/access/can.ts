import { InputProblem } from "#lib/errors/input-problem.ts";
import type { MemberRole } from "#lib/store/repositories/organizations.ts";
import type { Actor } from "./actor.ts";

/** What an action is done to. What is left out does not limit the action. */
export interface Subject {
  /** Whose it is; of a claim, the contractor. */
  organizationId?: string;
  /** Of a claim: who runs the program. */
  programOrganizationId?: string;
  proposalId?: string;
}

type Rule = (actor: Actor, subject: Subject) => boolean;

/** A member with one of these roles, in the organization that the subject belongs to. */
function own(...roles: readonly MemberRole[]): Rule {
  return (actor, { organizationId }) =>
    actor.kind === "member" &&
    roles.includes(actor.role) &&
    (organizationId === undefined || organizationId === actor.organizationId);
}

/** A member of a contractor, so that a program's owner does not edit jobs. */
function contractor(...roles: readonly MemberRole[]): Rule {
  return (actor, subject) =>
    actor.kind === "member" && actor.organizationKind === "contractor" && own(...roles)(actor, subject);
}

/** A reviewer or owner of the program that the subject was sent to. */
const program: Rule = (actor, { programOrganizationId }) =>
  actor.kind === "member" &&
  actor.organizationKind === "program" &&
  (actor.role === "reviewer" || actor.role === "owner") &&
  (programOrganizationId === undefined || programOrganizationId === actor.organizationId);

/** The homeowner, of the proposal that the link was for. */
const homeowner: Rule = (actor, { proposalId }) =>
  actor.kind === "homeowner" && (proposalId === undefined || proposalId === actor.proposalId);

const anyOf =
  (...rules: readonly Rule[]): Rule =>
  (actor, subject) =>
    rules.some((rule) => rule(actor, subject));

/** Every action of the product and who may do it. Row-level security stands behind, by organization. */
const RULES = {
  "job.view": contractor("owner", "estimator", "crew"),
  "job.create": contractor("owner", "estimator"),
  "job.edit": contractor("owner", "estimator"),
  "job.record-readings": contractor("owner", "estimator", "crew"),
  "job.close": contractor("owner", "estimator"),
  "client.edit": contractor("owner", "estimator"),
  "proposal.issue": contractor("owner", "estimator"),
  "proposal.withdraw": contractor("owner", "estimator"),
  "proposal.answer": contractor("owner", "estimator"),
  "proposal.view": anyOf(contractor("owner", "estimator", "crew"), homeowner),
  "proposal.ask": homeowner,
  "proposal.accept": homeowner,
  "price-book.view": contractor("owner", "estimator"),
  "price-book.edit": contractor("owner"),
  "repairs.view": contractor("owner", "estimator", "crew"),
  "repairs.edit": contractor("owner"),
  "instrument.view": contractor("owner", "estimator", "crew"),
  "instrument.edit": contractor("owner", "estimator"),
  "organization.edit": own("owner"),
  "api-key.manage": own("owner", "reviewer"),
  "audit.view": own("owner", "reviewer"),
  "claim.submit": contractor("owner", "estimator"),
  "claim.withdraw": contractor("owner", "estimator"),
  "claim.view": anyOf(contractor("owner", "estimator"), program),
  "claim.comment": anyOf(contractor("owner", "estimator"), program),
  "claim.import": program,
  "claim.flag": program,
  "claim.decide": program,
  "claim.recompute": anyOf(contractor("owner", "estimator"), program),
  "inspection.draw": program,
  "inspection.record": program,
  "program.edit": program,
  "program.invite": program,
} as const satisfies Record<string, Rule>;

export type Action = keyof typeof RULES;

export const ACTIONS = Object.keys(RULES) as readonly Action[];

/** Whether somebody may do this. Screens ask to show a button, actions ask again before they do anything. */
export function can(actor: Actor, action: Action, subject: Subject = {}): boolean {
  return RULES[action](actor, subject);
}

/** @throws InputProblem `not-allowed` */
export function requireAllowed(actor: Actor, action: Action, subject: Subject = {}): void {
  if (can(actor, action, subject)) return;
  const who = actor.kind === "member" ? `${actor.name} (${actor.role})` : "The homeowner";
  throw new InputProblem("not-allowed", [], `${who} may not do this: ${action}`);
}
