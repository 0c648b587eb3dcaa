import { LinkButton } from "#app/design/button.tsx";
import { Notice } from "#app/design/notice.tsx";
import { StatGrid } from "#app/design/stat-block.tsx";
import { finishPractice, type PracticeView } from "#lib/simulate/practice.ts";
import { PRACTICE_SCENARIOS, type PracticeScenario } from "#lib/simulate/practice-scenarios.ts";
import type { PracticeSetup } from "#lib/simulate/practice-setup.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { formatPercent } from "#lib/units/format.ts";
import { unitText } from "#lib/units/unit-text.ts";
import styles from "../practice.module.css";

/** The truth beside the learner's result, and what there is to learn from it. */
export function PracticeOutcomeView({
  scenario,
  view,
  setup,
  units,
}: {
  scenario: PracticeScenario;
  view: PracticeView;
  setup: PracticeSetup;
  units: UnitSystem;
}) {
  if (view.resultCfm25 === undefined) {
    return (
      <Notice kind="problem" title="There is nothing to write down yet." isLive>
        <p>The gauge shows no pressure to calculate with. Turn the fan up until ducts and fan show one.</p>
      </Notice>
    );
  }
  const { truthCfm25, resultCfm25, missRatio, isTrusted } = finishPractice({
    scenario,
    view,
    testKind: setup.testKind,
  });
  const text = unitText(units);
  const unit = text.unit("cfm at 25 Pa");
  const cfm25 = (value: number) => text.number(value, "cfm at 25 Pa");
  const next = PRACTICE_SCENARIOS[PRACTICE_SCENARIOS.indexOf(scenario) + 1];
  const miss =
    Math.abs(missRatio) < 0.005
      ? "the same to the percent"
      : `${formatPercent(Math.abs(missRatio))} too ${missRatio > 0 ? "high" : "low"}`;
  return (
    <section aria-labelledby="outcome" className={styles.outcome}>
      <h2 id="outcome" tabIndex={-1}>
        Your result and the truth
      </h2>
      <StatGrid
        stats={[
          { id: "result", label: "Your result", value: cfm25(resultCfm25), unit, doubt: miss },
          {
            id: "truth",
            label: setup.testKind === "total-leakage" ? "The leaks add up to" : "Of it, the leaks to outside",
            value: cfm25(truthCfm25),
            unit,
            doubt: "as the house was made",
          },
        ]}
      />
      <Notice
        kind={isTrusted ? "good" : "problem"}
        title={
          isTrusted
            ? "The set-up was right."
            : "Something was still wrong: see above whether the reading can be trusted."
        }
        isLive
      >
        <p>{scenario.lesson}</p>
        <p>
          A right set-up still misses by a little: the ducts do not stand at one pressure everywhere, the fan's own
          throttling included.
        </p>
      </Notice>
      {next ? (
        <LinkButton href={`/practice/${next.id}`} variant="secondary">
          Next house: {next.title}
        </LinkButton>
      ) : null}
    </section>
  );
}
