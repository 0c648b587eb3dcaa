import { describe, expect, test } from "vitest";
import type { Actor, HomeownerActor } from "#lib/access/actor.ts";
import { ACTIONS, type Action, can, requireAllowed } from "#lib/access/can.ts";
import { DEMO_IDENTITIES } from "#lib/access/demo-identities.ts";

const homeowner: HomeownerActor = {
  kind: "homeowner",
  actorId: null,
  organizationId: DEMO_IDENTITIES.owner.organizationId,
  proposalId: "11111111-1111-4111-8111-111111111111",
};
const ACTORS = { ...DEMO_IDENTITIES, homeowner } satisfies Record<string, Actor>;
type Who = keyof typeof ACTORS;

/** Written out by hand, so that a rule cannot change without this table saying so. */
const EXPECTED: Record<Action, readonly Who[]> = {
  "job.view": ["owner", "estimator", "crew", "other-estimator"],
  "job.create": ["owner", "estimator", "other-estimator"],
  "job.edit": ["owner", "estimator", "other-estimator"],
  "job.record-readings": ["owner", "estimator", "crew", "other-estimator"],
  "job.close": ["owner", "estimator", "other-estimator"],
  "client.edit": ["owner", "estimator", "other-estimator"],
  "proposal.issue": ["owner", "estimator", "other-estimator"],
  "proposal.withdraw": ["owner", "estimator", "other-estimator"],
  "proposal.answer": ["owner", "estimator", "other-estimator"],
  "proposal.view": ["owner", "estimator", "crew", "other-estimator", "homeowner"],
  "proposal.ask": ["homeowner"],
  "proposal.accept": ["homeowner"],
  "price-book.view": ["owner", "estimator", "other-estimator"],
  "price-book.edit": ["owner"],
  "repairs.view": ["owner", "estimator", "crew", "other-estimator"],
  "repairs.edit": ["owner"],
  "instrument.view": ["owner", "estimator", "crew", "other-estimator"],
  "instrument.edit": ["owner", "estimator", "other-estimator"],
  "organization.edit": ["owner"],
  "api-key.manage": ["owner", "reviewer"],
  "audit.view": ["owner", "reviewer"],
  "claim.submit": ["owner", "estimator", "other-estimator"],
  "claim.withdraw": ["owner", "estimator", "other-estimator"],
  "claim.view": ["owner", "estimator", "other-estimator", "reviewer"],
  "claim.comment": ["owner", "estimator", "other-estimator", "reviewer"],
  "claim.import": ["reviewer"],
  "claim.flag": ["reviewer"],
  "claim.decide": ["reviewer"],
  "claim.recompute": ["owner", "estimator", "other-estimator", "reviewer"],
  "inspection.draw": ["reviewer"],
  "inspection.record": ["reviewer"],
  "program.edit": ["reviewer"],
  "program.invite": ["reviewer"],
};

describe("who may do what", () => {
  test.each(ACTIONS.map((action) => [action] as const))("%s", (action) => {
    const allowed = (Object.keys(ACTORS) as Who[]).filter((who) => can(ACTORS[who], action));
    expect(allowed).toEqual(EXPECTED[action]);
  });

  test("every action is somebody's and not everybody's", () => {
    expect(ACTIONS.length).toBeGreaterThan(20);
    for (const action of ACTIONS) {
      const count = Object.values(ACTORS).filter((actor) => can(actor, action)).length;
      expect(count, action).toBeGreaterThan(0);
      expect(count, action).toBeLessThan(Object.keys(ACTORS).length);
    }
  });
});

describe("whose it is", () => {
  const { owner, reviewer } = DEMO_IDENTITIES;
  const other = DEMO_IDENTITIES["other-estimator"];

  test("nobody does to another organization's what they may do to their own", () => {
    for (const action of ["job.view", "job.edit", "proposal.issue", "claim.submit", "instrument.edit"] as const) {
      expect(can(owner, action, { organizationId: owner.organizationId }), action).toBe(true);
      expect(can(owner, action, { organizationId: other.organizationId }), action).toBe(false);
    }
  });

  test("a reviewer decides claims of the own program alone, and edits no contractor's job", () => {
    const claim = { organizationId: owner.organizationId, programOrganizationId: reviewer.organizationId };
    expect(can(reviewer, "claim.decide", claim)).toBe(true);
    expect(can(reviewer, "claim.decide", { ...claim, programOrganizationId: other.organizationId })).toBe(false);
    expect(can(reviewer, "job.edit", { organizationId: owner.organizationId })).toBe(false);
  });

  test("a contractor sees the own claim, not another contractor's in the same program", () => {
    const programOrganizationId = reviewer.organizationId;
    expect(can(owner, "claim.view", { organizationId: owner.organizationId, programOrganizationId })).toBe(true);
    expect(can(owner, "claim.view", { organizationId: other.organizationId, programOrganizationId })).toBe(false);
  });

  test("a homeowner accepts the proposal of the link, and no other", () => {
    expect(can(homeowner, "proposal.accept", { proposalId: homeowner.proposalId })).toBe(true);
    expect(can(homeowner, "proposal.accept", { proposalId: "22222222-2222-4222-8222-222222222222" })).toBe(false);
  });

  test("a refusal says who may not do what", () => {
    expect(() => requireAllowed(DEMO_IDENTITIES.crew, "proposal.issue")).toThrow(
      /Sunniva Holt \(crew\).*proposal\.issue/,
    );
    expect(() => requireAllowed(owner, "proposal.issue")).not.toThrow();
  });
});
