import type { Metadata } from "next";
import { Button } from "#app/design/button.tsx";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { Notice } from "#app/design/notice.tsx";
import { whoActs } from "#app/jobs/session.ts";
import styles from "#app/program/program.module.css";
import { DEMO_IDENTITIES } from "#lib/access/demo-identities.ts";
import { actAsPerson } from "./actions.ts";

export const metadata: Metadata = { title: "Who acts" };

const ROLES = {
  owner: "Owner: prices, people, everything",
  estimator: "Estimator: measures, proposes, hands in claims",
  crew: "Crew: does the work and the retest",
  reviewer: "Reviewer: looks at claims, asks, decides",
} as const;

/** Until there is a sign-in, one chooses as whom to act; what each may do and see is decided as if they had signed in. */
export default async function WhoPage({ searchParams }: { searchParams: Promise<{ why?: string }> }) {
  const [actor, { why }] = [await whoActs(), await searchParams];
  return (
    <>
      <DemoBanner>There is no sign-in yet. These people and organizations are made up.</DemoBanner>
      <div className={styles.page}>
        <h1>Who acts?</h1>
        {why === "not-allowed" ? (
          <Notice kind="info" title={`That page is not for ${actor.name}.`}>
            Act as somebody whose work it is.
          </Notice>
        ) : null}
        <p>
          You act as <strong>{actor.name}</strong> of {actor.organizationName}. Each person sees and may do only what is
          theirs; the homeowner comes by the link of a proposal.
        </p>
        <ul className={styles.people}>
          {Object.entries(DEMO_IDENTITIES).map(([id, person]) => (
            <li key={id} className={styles.person}>
              <div>
                <p>
                  <strong>{person.name}</strong>, {person.organizationName}
                </p>
                <p className={styles.over}>{ROLES[person.role]}</p>
              </div>
              {person.actorId === actor.actorId ? (
                <span className={styles.state}>You act as {person.name}</span>
              ) : (
                <form action={actAsPerson}>
                  <input type="hidden" name="identity" value={id} />
                  <Button type="submit" variant="secondary">
                    Act as {person.name}
                  </Button>
                </form>
              )}
            </li>
          ))}
        </ul>
      </div>
    </>
  );
}
