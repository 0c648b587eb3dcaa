"use client";

import { Notice } from "#app/design/notice.tsx";
import { Picture } from "#app/design/picture.tsx";
import { StatGrid } from "#app/design/stat-block.tsx";
import { WithTerms } from "#app/words/with-terms.tsx";
import { COMPACT_WIDTH } from "#lib/pictures/scene.ts";
import type { Answer, DrawnScene } from "./answer.ts";
import type { MissingField } from "./missing.ts";
import styles from "./trip.module.css";
import type { TripStepId } from "./trip-steps.ts";

const pick =
  ({ wide, compact }: DrawnScene) =>
  ({ width }: { width: number }) =>
    width === COMPACT_WIDTH ? compact : wide;

/** The answer as it grows, or what is still needed before there can be one. */
export function AnswerPanel({
  answer,
  hasHouse = true,
  missing,
  hrefOf,
  hrefOfStep,
}: {
  answer: Answer | null;
  /** Not on the walk, where the house itself is what one works on. */
  hasHouse?: boolean;
  missing: readonly MissingField[];
  hrefOf: (missing: MissingField) => string;
  hrefOfStep: (step: TripStepId) => string;
}) {
  return (
    <>
      {answer ? (
        <>
          {hasHouse ? <Picture build={pick(answer.house)} headingLevel={2} isHeadingHidden /> : null}
          {answer.stats.length > 0 ? (
            <StatGrid
              stats={answer.stats.map(({ label, ...stat }) => ({
                ...stat,
                label: <WithTerms key="label">{label}</WithTerms>,
              }))}
            />
          ) : (
            <Notice kind="info" title="The answer begins with a reading or a leak">
              <p>
                The house is there. Enter <a href={hrefOfStep("readings")}>what the gauge read</a> or{" "}
                <a href={hrefOfStep("leaks")}>a leak you saw</a>, and its cost appears here.
              </p>
            </Notice>
          )}
          {answer.dollars ? <Picture build={pick(answer.dollars)} headingLevel={2} isHeadingHidden /> : null}
        </>
      ) : null}
      {missing.length > 0 ? (
        <Notice kind="info" title={answer ? "The answer waits for this" : "The answer grows here"}>
          <p>{answer ? "What you see is from before." : "It needs a little more:"}</p>
          <ul className={styles.missingList}>
            {missing.slice(0, 6).map((each) => (
              <li key={each.pointer}>
                <a href={hrefOf(each)}>{each.text}</a>
              </li>
            ))}
          </ul>
        </Notice>
      ) : null}
    </>
  );
}
