import type { Metadata } from "next";
import Link from "next/link";
import { Button, LinkButton } from "#app/design/button.tsx";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { EmptyState } from "#app/design/empty-state.tsx";
import { Notice } from "#app/design/notice.tsx";
import { Picture } from "#app/design/picture.tsx";
import { unitSystem } from "#app/units/unit-system.ts";
import { can } from "#lib/access/can.ts";
import { priceFrontierScene } from "#lib/pictures/price-frontier.ts";
import { sentenceInSystem } from "#lib/units/sentence-in-system.ts";
import { unitText } from "#lib/units/unit-text.ts";
import { computePoint, computePoints, computeResult } from "../../compute-result.ts";
import { showAs } from "../../session.ts";
import { showJob } from "../../show-job.ts";
import { dropPick } from "./actions.ts";
import { frontierInput, pointsBetween } from "./frontier-input.ts";
import { GoalForm } from "./goal-form.tsx";
import styles from "./options.module.css";
import { optionWords, pointGist, pointId, pointWords } from "./scope-card.ts";
import { ScopeCards } from "./scope-cards.tsx";

export const metadata: Metadata = { title: "Choose the work" };

interface Props {
  params: Promise<{ id: string }>;
  searchParams: Promise<Record<string, string | undefined>>;
}

/** Price against leakage left, the options side by side with what each leaves and why, and the pick. */
export default async function OptionsPage({ params, searchParams }: Props) {
  const [{ id }, query] = await Promise.all([params, searchParams]);
  const { record, job } = await showJob(id);
  const mayPick = await showAs("job.view", async (_, actor) => can(actor, "job.edit"));
  const [result, points] = await Promise.all([computeResult(job), computePoints(job)]);
  const text = unitText(await unitSystem());
  const { scope } = result;
  const between = pointsBetween(points, scope.options);
  const input = frontierInput(result, between);
  const told = { job, text, hasTarget: scope.target !== null };
  const options = [...scope.options].sort((one, other) => one.priceUsdCents - other.priceUsdCents);
  const looked = between.find((point) => pointId(point) === query.point);
  const lookedAsWork = looked && (await computePoint(job, looked));
  return (
    <>
      {record.isDemo ? <DemoBanner>{`${record.title} is made up.`}</DemoBanner> : null}
      <div className={styles.page}>
        <p className={styles.over}>
          <Link href={`/jobs/${id}/result`}>{record.title}, result</Link>
        </p>
        <h1>Choose the work</h1>
        {scope.target ? (
          <p className={styles.lead}>
            {`${sentenceInSystem(scope.target.title, text.system)}: at most ${text.quantity(scope.target.limitCfm25, "cfm")} ${scope.target.measure === "total" ? "in all" : "to outside"}, at 25 Pa.`}
          </p>
        ) : (
          <p className={styles.lead}>No target is set, so the options are about what pays.</p>
        )}
        <ul className={styles.list}>
          {scope.verdict.otherReasons.map((reason) => (
            <li key={reason}>{sentenceInSystem(reason, text.system)}</li>
          ))}
        </ul>
        {input ? (
          <>
            <h2>Side by side</h2>
            <ScopeCards
              jobId={id}
              mayPick={mayPick}
              cards={options.map((option) => optionWords(option, { ...told, isChosen: option.id === scope.chosen }))}
            />
            <Picture
              headingLevel={2}
              build={(size) => priceFrontierScene(input, { ...size, units: text.system })}
              itemHref={(item) =>
                scope.options.some((option) => option.id === item)
                  ? `#${item === scope.chosen ? "chosen" : item}`
                  : `?point=${item}#between`
              }
            />
            <section aria-labelledby="between">
              <h2 id="between">Between the options</h2>
              {looked ? (
                <ScopeCards
                  jobId={id}
                  mayPick={mayPick}
                  cards={[pointWords(looked, { ...told, isChosen: false }, lookedAsWork)]}
                />
              ) : (
                <p>
                  {between.length === 0
                    ? "The options are all that is worth looking at."
                    : "Press a numbered point of the drawing, or one here, to see it and to choose it."}
                </p>
              )}
              <ul className={styles.points}>
                {between.map((point) => (
                  <li key={point.id}>
                    <LinkButton variant="quiet" href={`?point=${pointId(point)}#between`}>
                      Point {point.id}
                    </LinkButton>
                    <span className={styles.small}>{pointGist(point, told)}</span>
                  </li>
                ))}
              </ul>
            </section>
          </>
        ) : (
          <EmptyState title="Nothing to choose">No leak was found that is worth its repair.</EmptyState>
        )}
        {mayPick && job.plan?.chosenMeasures ? (
          <Notice kind="info" title="This job holds a choice of its own">
            It stays as it is when prices or leaks change.
            <form action={dropPick} className={styles.actions}>
              <input type="hidden" name="jobId" value={id} />
              <Button type="submit" variant="quiet">
                Let go of it
              </Button>
            </form>
          </Notice>
        ) : null}
        {mayPick ? (
          <section aria-labelledby="goal">
            <h2 id="goal">Another goal</h2>
            <GoalForm jobId={id} plan={job.plan} typed={query} wrong={query.wrong?.split(" ") ?? []} />
          </section>
        ) : null}
        <p className={styles.actions}>
          <LinkButton href={`/jobs/${id}/proposal`}>Make a proposal</LinkButton>
          <LinkButton href={`/jobs/${id}/result`} variant="secondary">
            Back to the result
          </LinkButton>
        </p>
      </div>
    </>
  );
}
