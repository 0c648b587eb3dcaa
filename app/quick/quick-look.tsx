"use client";

import { useMemo, useState, useTransition } from "react";
import { AnswerBar } from "#app/design/answer-bar.tsx";
import { Button } from "#app/design/button.tsx";
import { PlainSelect } from "#app/design/plain-select.tsx";
import { QuantityField } from "#app/design/quantity-field.tsx";
import { readQuantity } from "#app/design/read-quantity.ts";
import { TextField } from "#app/design/text-field.tsx";
import { TripLayout } from "#app/design/trip-layout.tsx";
import { readInUnits } from "#app/units/read-in-units.ts";
import type { PlaceKind } from "#lib/job/place.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { type UnitText, unitText } from "#lib/units/unit-text.ts";
import { AnswerPanel } from "../jobs/trip/answer-panel.tsx";
import type { Draft } from "../jobs/trip/draft.ts";
import { choiceLabel, UNIT_WORDS } from "../jobs/trip/field-words.ts";
import { type MissingField, missingFields } from "../jobs/trip/missing.ts";
import { useAnswer } from "../jobs/trip/use-answer.ts";
import { openAsJob } from "./open-as-job.ts";
import styles from "./quick.module.css";
import { QUICK_EQUIPMENT, type QuickAnswers, quickLookDocument, standInSizes } from "./quick-look-document.ts";

const PLACES: readonly PlaceKind[] = [
  "attic",
  "vented-crawlspace",
  "unvented-crawlspace",
  "basement",
  "garage",
  "belly",
  "conditioned",
];
const NOTHING_YET = { answer: null, problems: [] };
const CHOOSE = { value: "", label: "Choose one" };

interface Texts {
  zip: string;
  area: string;
  equipment: string;
  place: string;
  pressure: string;
  flow: string;
}

/** The five questions in their order: what is asked, and which field of the job tells that it is still open. */
const QUESTIONS: readonly { id: keyof Texts; text: string }[] = [
  { id: "zip", text: "Enter the ZIP code" },
  { id: "area", text: "Enter the floor area" },
  { id: "equipment", text: "Choose the equipment" },
  { id: "place", text: "Say where the ducts are" },
  { id: "flow", text: "Enter one reading" },
];

/** A number only where one can be read; a ZIP code only when it is whole. */
function answersOf({ zip, area, equipment, place, pressure, flow }: Texts, system: UnitSystem): QuickAnswers {
  const whole = zip.trim();
  return {
    ...(/^\d{5}$/.test(whole) ? { zip: whole } : {}),
    floorAreaFt2: readInUnits(area, { unit: "ft²", system }),
    ...(equipment === "" ? {} : { equipmentId: equipment }),
    ...(place === "" ? {} : { placeKind: place as PlaceKind }),
    reading: { ductPressurePa: readQuantity(pressure), flowCfm: readInUnits(flow, { unit: "cfm", system }) },
  };
}

const isOpen = (id: keyof Texts, answers: QuickAnswers, texts: Texts): boolean => {
  if (id === "zip") return answers.zip === undefined;
  if (id === "area") return answers.floorAreaFt2 === undefined;
  if (id === "flow") return answers.reading?.flowCfm === undefined || answers.reading.ductPressurePa === undefined;
  return texts[id] === "";
};

/** Five questions answered while they are asked; the same answers open as a full job. */
export function QuickLook({ today, units }: { today: string; units: UnitSystem }) {
  const text = unitText(units);
  const [texts, setTexts] = useState<Texts>({
    zip: "",
    area: "",
    equipment: "",
    place: "",
    pressure: "25",
    flow: "",
  });
  const [isOpening, startOpening] = useTransition();
  const answers = useMemo(() => answersOf(texts, units), [texts, units]);
  // What is undefined is left out, as in a file.
  const draft = useMemo(() => JSON.parse(JSON.stringify(quickLookDocument(answers, today))) as Draft, [answers, today]);
  const { answer, problems } = useAnswer({ jobId: "quick", draft, units, first: NOTHING_YET });
  const open = QUESTIONS.filter(({ id }) => isOpen(id, answers, texts));
  const missing = open.length > 0 ? open.map(asMissing) : missingFields(problems, units);
  const setText = (id: keyof Texts) => (event: { currentTarget: { value: string } }) => {
    const { value } = event.currentTarget;
    setTexts((before) => ({ ...before, [id]: value }));
  };
  const panel = (
    <AnswerPanel
      answer={open.length > 0 ? null : answer}
      missing={missing}
      hrefOf={({ path }) => `#${path}`}
      hrefOfStep={() => "#flow"}
    />
  );
  return (
    <TripLayout
      answer={panel}
      answerBar={
        <AnswerBar
          stats={
            answer && open.length === 0
              ? answer.bar
              : [{ id: "none", label: "Answer", value: `${QUESTIONS.length - open.length} of ${QUESTIONS.length}` }]
          }
        >
          {panel}
        </AnswerBar>
      }
    >
      <form
        noValidate
        className={styles.form}
        onSubmit={(event) => {
          event.preventDefault();
          startOpening(() => openAsJob(draft));
        }}
      >
        <h1>Five questions, one answer</h1>
        <p>
          Enough to see whether a house is worth a visit. Whatever you enter stays when you go on with the full job.
        </p>
        <TextField
          id="zip"
          label="1. ZIP code"
          hint="For the weather and the energy prices."
          inputMode="numeric"
          autoComplete="off"
          value={texts.zip}
          onChange={setText("zip")}
        />
        <QuantityField
          id="area"
          label={`2. Conditioned floor area, ${UNIT_WORDS[text.unit("ft²")]}`}
          unit={text.unit("ft²")}
          value={texts.area}
          onChange={setText("area")}
        />
        <PlainSelect
          id="equipment"
          label="3. Equipment"
          note={sizeNote(answers, text)}
          options={[CHOOSE, ...QUICK_EQUIPMENT.map(({ id, label }) => ({ value: id, label }))]}
          value={texts.equipment}
          onChange={setText("equipment")}
        />
        <PlainSelect
          id="place"
          label="4. Where most of the ducts are"
          options={[CHOOSE, ...PLACES.map((value) => ({ value, label: choiceLabel("places/*/kind", value) }))]}
          value={texts.place}
          onChange={setText("place")}
        />
        <fieldset className={styles.reading}>
          <legend>5. One reading of the total leakage</legend>
          <div className={styles.pair}>
            <QuantityField
              id="pressure"
              label="Duct pressure, in pascals"
              unit="Pa"
              value={texts.pressure}
              onChange={setText("pressure")}
            />
            <QuantityField
              id="flow"
              label={`Fan flow, ${UNIT_WORDS[text.unit("cfm")]}`}
              unit={text.unit("cfm")}
              value={texts.flow}
              onChange={setText("flow")}
            />
          </div>
        </fieldset>
        <Button type="submit" disabled={isOpening}>
          {isOpening ? "Opening" : "Go on as a full job"}
        </Button>
      </form>
    </TripLayout>
  );
}

const asMissing = ({ id, text }: (typeof QUESTIONS)[number]): MissingField => ({
  pointer: `#/${id}`,
  path: id,
  step: "house",
  text,
  isMissing: true,
});

/** The default before it is used: the sizes that stand in for the nameplates. */
function sizeNote(answers: QuickAnswers, text: UnitText): string | undefined {
  const sizes = standInSizes(answers);
  if (!sizes) return undefined;
  const parts = [
    sizes.heatingBtuPerH ? `${text.quantity(sizes.heatingBtuPerH, "Btu/h")} of heating` : "",
    sizes.coolingBtuPerH ? `${text.quantity(sizes.coolingBtuPerH, "Btu/h")} of cooling` : "",
  ].filter(Boolean);
  return `Taken by the floor area until you read the nameplate: ${parts.join(" and ")}.`;
}
