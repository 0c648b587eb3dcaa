import { Checkbox } from "#app/design/checkbox.tsx";
import { DataTable } from "#app/design/data-table.tsx";
import { Notice, type NoticeKind } from "#app/design/notice.tsx";
import { Picture } from "#app/design/picture.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import type { ValidityNote } from "#lib/errors/validity-note.ts";
import { hoseScene } from "#lib/pictures/hose-scene.ts";
import type { CoverComparison } from "#lib/setup/register-cover.ts";
import type { RestrictorPlan } from "#lib/setup/restrictor-plan.ts";
import { SETUP_PHASES } from "#lib/setup/rules/rule.ts";
import type { SetupAnswers } from "#lib/setup/setup-answers.ts";
import type { SetupSheet } from "#lib/setup/setup-sheet.ts";
import { formatNumber, formatUsdCents } from "#lib/units/format.ts";
import { sentenceInSystem } from "#lib/units/sentence-in-system.ts";
import type { UnitText } from "#lib/units/unit-text.ts";
import styles from "./setup.module.css";
import { basisWords, PHASE_WORDS } from "./setup-words.ts";

const KINDS: Readonly<Record<ValidityNote["severity"], NoticeKind>> = {
  note: "info",
  doubt: "doubt",
  problem: "problem",
};

/** The sheet: the drawing, what to expect on the fan, and the checklist in the order of the work. */
export function SetupSheetView({ sheet, answers, text }: { sheet: SetupSheet; answers: SetupAnswers; text: UnitText }) {
  const { title, drawing, restrictorPlan, covers, warnings, steps } = sheet;
  const expectedFanPressurePa = restrictorPlan?.chosen?.expectedFanPressurePa;
  const inTheWay = warnings.filter(({ severity }) => severity !== "note");
  // The banner above says already that an instrument is invented.
  const asides = warnings.filter(({ severity, code }) => severity === "note" && code !== "invented-instrument");
  return (
    <div className={styles.sheet}>
      <div className={styles.drawing}>
        <Notes notes={inTheWay} text={text} />
        <Picture
          headingLevel={2}
          build={(options) =>
            hoseScene(
              {
                title,
                direction: answers.direction,
                drawing,
                ...(expectedFanPressurePa === undefined ? {} : { expectedFanPressurePa }),
              },
              options,
            )
          }
        />
        {restrictorPlan ? <Restrictor plan={restrictorPlan} answers={answers} text={text} /> : null}
        <Notes notes={asides} text={text} />
        {covers ? <Covers covers={covers} /> : null}
      </div>
      <section aria-labelledby="steps">
        <h2 id="steps">Step by step</h2>
        {SETUP_PHASES.map((phase) => {
          const ofPhase = steps.filter((step) => step.phase === phase);
          if (ofPhase.length === 0) return null;
          return (
            <section key={phase} className={styles.phase} aria-labelledby={phase}>
              <h3 id={phase}>{PHASE_WORDS[phase]}</h3>
              <ol className={styles.steps} start={steps.indexOf(ofPhase[0]!) + 1}>
                {ofPhase.map(({ id, step, why, basis }) => (
                  <li key={id}>
                    <Checkbox
                      label={sentenceInSystem(step, text.system)}
                      hint={
                        <>
                          {sentenceInSystem(why, text.system)}{" "}
                          <span className={styles.basis}>{basisWords(basis)}.</span>
                        </>
                      }
                    />
                  </li>
                ))}
              </ol>
            </section>
          );
        })}
      </section>
    </div>
  );
}

function Notes({ notes, text }: { notes: readonly ValidityNote[]; text: UnitText }) {
  const say = (sentence: string) => sentenceInSystem(sentence, text.system);
  return notes.map((note) => (
    <Notice key={`${note.code} ${note.what}`} kind={KINDS[note.severity]} title={say(note.what)}>
      <p>
        {say(note.why)} {say(note.nextMove)}
      </p>
    </Notice>
  ));
}

function Covers({ covers }: { covers: CoverComparison }) {
  return (
    <section aria-labelledby="covers">
      <h2 id="covers">What the covers cost</h2>
      <p>
        Adhesive film costs about {formatUsdCents(covers.differenceUsdCents)} more for {covers.registerCount} registers.
        The prices are an order of size; your own may differ.
      </p>
      <DataTable
        caption={`Covers for ${covers.registerCount} registers`}
        isCaptionHidden
        columns={[{ label: "Cover" }, { label: "Holds in this test" }, { label: "Cost", isNumeric: true }]}
        rows={covers.covers.map(({ cover, label, holds, totalUsdCents }) => ({
          id: cover,
          cells: [label, holds ? "yes" : "no, the air pushes it off", formatUsdCents(totalUsdCents)],
        }))}
      />
    </section>
  );
}

const READING_WORDS: Readonly<Record<RestrictorPlan["outlooks"][number]["reading"], string>> = {
  "inside-span": "inside its span",
  "below-span": "too large: below its span",
  "above-span": "too small: above its span",
};

/** Which flow restrictor to fit before closing up, and what the fan will then show. */
function Restrictor({ plan, answers, text }: { plan: RestrictorPlan; answers: SetupAnswers; text: UnitText }) {
  const { chosen, outlooks } = plan;
  const pascals = (value: number) => `${formatNumber(value)} Pa`;
  return (
    <section aria-labelledby="restrictor">
      <h2 id="restrictor">Flow restrictor</h2>
      {chosen ? (
        <p className={styles.expect}>
          Fit <strong>{chosen.calibration.restrictorLabel}</strong> on the {answers.fan?.restrictorSide ?? "inlet"}{" "}
          side. At {text.quantity(answers.expectedLeakageCfm ?? 0, "cfm")} the fan should show about{" "}
          <strong>{pascals(chosen.expectedFanPressurePa)}</strong>; it reads from{" "}
          {pascals(chosen.calibration.minFanPressurePa)} to {pascals(chosen.calibration.maxFanPressurePa)}.
        </p>
      ) : (
        <p>None of this fan’s restrictors reads the flow to expect; see above what to do.</p>
      )}
      {outlooks.length > 0 ? (
        <Disclosure title="All restrictors of this fan">
          <DataTable
            caption="What each would show at the flow to expect"
            isCaptionHidden
            columns={[
              { label: "Flow restrictor" },
              { label: "Fan pressure (Pa)", isNumeric: true },
              { label: "So it is" },
            ]}
            rows={outlooks.map(({ calibration, expectedFanPressurePa, reading }) => ({
              id: calibration.restrictorId,
              cells: [calibration.restrictorLabel, formatNumber(expectedFanPressurePa), READING_WORDS[reading]],
            }))}
          />
        </Disclosure>
      ) : null}
    </section>
  );
}
