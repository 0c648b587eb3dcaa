"use client";

import { type FormEvent, useState } from "react";
import { Button, LinkButton } from "#app/design/button.tsx";
import { Notice } from "#app/design/notice.tsx";
import { Picture } from "#app/design/picture.tsx";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { hoseScene } from "#lib/pictures/hose-scene.ts";
import { DEMO_FAN } from "#lib/setup/demo-instruments.ts";
import { TEST_TRAITS } from "#lib/setup/test-traits.ts";
import { type PracticeView, viewPractice } from "#lib/simulate/practice.ts";
import { practiceDrawing } from "#lib/simulate/practice-drawing.ts";
import type { PracticeScenario } from "#lib/simulate/practice-scenarios.ts";
import type { PracticeSetup } from "#lib/simulate/practice-setup.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import styles from "../practice.module.css";
import { type PracticeQuery, readPracticeQuery } from "../practice-query.ts";
import { CHANNEL_LABELS, shownPressure } from "../practice-words.ts";
import { PracticeCheck } from "./practice-check.tsx";
import { PracticeControls } from "./practice-controls.tsx";
import { PracticeOutcomeView } from "./practice-outcome.tsx";

/**
 * The bench of a practice house: what one sets at the left, what the gauge shows at the right. With script it answers
 * while one turns the dial; without it the form asks the server the same questions.
 */
export function PracticeBench({
  scenario,
  query,
  units,
}: {
  scenario: PracticeScenario;
  query: PracticeQuery;
  units: UnitSystem;
}) {
  const [asked, setAsked] = useState(query);
  const [nudges, setNudges] = useState(0);
  const [round, setRound] = useState(0);
  const startAgain = () => {
    setAsked({});
    setRound(round + 1);
  };
  const { setup, isDone } = readPracticeQuery({ query: asked, scenario, fan: DEMO_FAN });
  const seen = look(scenario, setup);

  const readForm = (event: FormEvent<HTMLFormElement>, submitter?: HTMLElement | null) => {
    setAsked(Object.fromEntries(new FormData(event.currentTarget, submitter)) as PracticeQuery);
  };
  return (
    <form
      method="get"
      className={styles.bench}
      onChange={(event) => readForm(event)}
      onSubmit={(event) => {
        event.preventDefault();
        readForm(event, (event.nativeEvent as SubmitEvent).submitter);
        setNudges(nudges + 1);
      }}
    >
      <PracticeControls key={round} setup={setup} scenario={scenario} nudges={nudges} />
      <div className={styles.seen}>
        {seen instanceof InputProblem ? (
          <Notice kind="problem" title={seen.message} isLive />
        ) : (
          <>
            <Gauge view={seen} />
            <div className={styles.picture}>
              <Picture
                headingLevel={2}
                isHeadingHidden
                build={(options) =>
                  hoseScene(
                    {
                      title: TEST_TRAITS[setup.testKind].title,
                      direction: setup.direction,
                      drawing: practiceDrawing({ setup, fan: DEMO_FAN, hasFilmBlownOff: seen.hasFilmBlownOff }),
                      shown: {
                        duct: shownPressure(seen.readings.duct),
                        fan: shownPressure(seen.readings.fan),
                        house: shownPressure(seen.readings.house),
                      },
                    },
                    options,
                  )
                }
              />
            </div>
            <div className={styles.verdict}>
              <PracticeCheck view={seen} />
              <p className={styles.actions}>
                <Button type="submit" name="done" value="1">
                  I would write this down
                </Button>
                <LinkButton href={`/practice/${scenario.id}`} variant="quiet" onClick={startAgain}>
                  Start again
                </LinkButton>
              </p>
              {isDone ? <PracticeOutcomeView scenario={scenario} view={seen} setup={setup} units={units} /> : null}
            </div>
          </>
        )}
      </div>
    </form>
  );
}

/** What the house shows; what it cannot answer comes back as the problem it is. */
function look(scenario: PracticeScenario, setup: PracticeSetup): PracticeView | InputProblem {
  try {
    return viewPractice({ scenario, setup, fan: DEMO_FAN });
  } catch (thrown) {
    if (thrown instanceof InputProblem) return thrown;
    throw thrown;
  }
}

/** The three channels, large enough to read from a ladder. */
function Gauge({ view }: { view: PracticeView }) {
  return (
    <dl className={styles.gauge} aria-label="The gauge shows">
      {(["duct", "fan", "house"] as const).map((id) => (
        <div key={id}>
          <dt>{CHANNEL_LABELS[id]}</dt>
          <dd>
            <output>{shownPressure(view.readings[id])}</output> Pa
          </dd>
        </div>
      ))}
    </dl>
  );
}
