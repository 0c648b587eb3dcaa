"use client";

import { Disclosure } from "#app/design/worked-out.tsx";
import { PLACE_LABELS, type PlaceKind } from "#lib/job/place.ts";
import { type UnitText, unitText } from "#lib/units/unit-text.ts";
import { type Draft, listAt, newId, numberAt, readAt, textAt } from "../draft.ts";
import { EntryList } from "../entry-list.tsx";
import { choiceLabel } from "../field-words.ts";
import { ChoiceAt, FlagAt, NumberAt, TextAt } from "../fields.tsx";
import { NotesAt } from "../notes.tsx";
import styles from "../trip.module.css";
import { useTrip } from "../trip-context.ts";
import { placeOptions } from "./job-options.ts";

/** First the places around the ducts, then the runs through them. */
export function DuctsStep() {
  const { draft, units } = useTrip();
  return (
    <>
      <h2>Places around the ducts</h2>
      <EntryList
        path="places"
        headingLevel={3}
        title={(place) => placeName(place)}
        addLabel="Add a place"
        makeNew={(list) => ({ id: newId(list, "place"), kind: list.length === 1 ? "attic" : "basement" })}
        keepReason={(place, index) =>
          listAt(draft, "places").length === 1 ? "" : whereUsed(draft, String(place.id ?? index))
        }
      >
        {(path, place) => <Place path={path} place={place} />}
      </EntryList>
      <NotesAt path="places" />
      <h2>Runs</h2>
      <p>
        Runs of one kind in one place may be entered as one. Give the length and the diameter, or the outer surface.
        Leave all of it empty and the usual surface for this floor area is assumed.
      </p>
      {listAt(draft, "systems").map((system, index) => (
        <section key={String(system.id)} className={styles.system}>
          {listAt(draft, "systems").length > 1 ? <h3>{textAt(system, "label") ?? `System ${index + 1}`}</h3> : null}
          <ChoiceAt path={`systems/${index}/airHandlerPlaceId`} options={placeOptions(draft)} />
          <NumberAt path={`systems/${index}/returnsCount`} />
          <EntryList
            path={`systems/${index}/runs`}
            headingLevel={listAt(draft, "systems").length > 1 ? 4 : 3}
            title={(run, at) =>
              textAt(run, "label") ?? `${choiceLabel("side", textAt(run, "side") ?? "")} run ${at + 1}`
            }
            facts={(run) => runFacts(run, { draft, text: unitText(units) })}
            addLabel="Add a run"
            makeNew={(list) => nextRun(draft, list)}
          >
            {(path) => <Run path={path} draft={draft} />}
          </EntryList>
        </section>
      ))}
    </>
  );
}

/** Keeps what stands on both sides of it on one line. */
const UNBROKEN = "\u2060";

/** A run in one line: where it is, what it is made of, how large it is. */
function runFacts(run: Draft, { draft, text }: { draft: Draft; text: UnitText }): string {
  const size = (key: string, unit: string) => {
    const value = numberAt(run, key);
    return value === undefined ? undefined : text.quantity(value, unit);
  };
  const place = placeOptions(draft)
    .find(({ value }) => value === run.placeId)
    ?.label.toLowerCase();
  const material = textAt(run, "material");
  const insulation = numberAt(run, "insulationRValue");
  const length = [size("lengthFt", "ft"), size("diameterIn", "in")].filter(Boolean).join(" of ");
  return [
    [textAt(run, "side"), place].filter(Boolean).join(", "),
    material && choiceLabel("systems/*/runs/*/material", material).toLowerCase(),
    (size("areaFt2", "ft²") ?? length) || "size not known",
    insulation === undefined ? undefined : insulation === 0 ? "bare" : `R${UNBROKEN}-${UNBROKEN}${insulation}`,
  ]
    .filter(Boolean)
    .join(" · ");
}

function placeName(place: Draft): string {
  const kind = textAt(place, "kind") as PlaceKind | undefined;
  const words = kind ? PLACE_LABELS[kind] : "place";
  return textAt(place, "label") ?? words.charAt(0).toUpperCase() + words.slice(1);
}

function whereUsed(draft: Draft, placeId: string): string | undefined {
  const runs = listAt(draft, "systems").flatMap((system) => listAt(system, "runs"));
  const isUsed =
    [...runs, ...listAt(draft, "sites")].some((entry) => entry.placeId === placeId) ||
    listAt(draft, "systems").some((system) => system.airHandlerPlaceId === placeId);
  return isUsed ? "In use" : undefined;
}

/** The next run is most often like the last one. */
function nextRun(draft: Draft, list: readonly Draft[]): Draft {
  const last = list.at(-1);
  const outside = listAt(draft, "places").find((place) => place.kind !== "conditioned");
  const placeId = last?.placeId ?? outside?.id ?? listAt(draft, "places")[0]?.id ?? "rooms";
  const { insulationRValue, material } = last ?? {};
  return {
    id: newId(list, "run"),
    side: "supply",
    placeId,
    ...(insulationRValue === undefined ? {} : { insulationRValue }),
    ...(material === undefined ? {} : { material }),
  };
}

function Place({ path, place }: { path: string; place: Draft }) {
  const kind = textAt(place, "kind");
  const isBelow = kind === "basement" || kind?.endsWith("crawlspace");
  return (
    <>
      <ChoiceAt path={`${path}/kind`} />
      {kind === "attic" ? <NumberAt path={`${path}/ceilingRValue`} /> : null}
      {kind === "attic" ? <ChoiceAt path={`${path}/roofColor`} isRow /> : null}
      {isBelow ? <ChoiceAt path={`${path}/insulation`} /> : null}
      <Disclosure title="Name, zone pressure and factors">
        <TextAt path={`${path}/label`} label="Name of this place" />
        {kind === "attic" ? (
          <>
            <NumberAt path={`${path}/roofUValue`} hint="About 0.5 for shingles on boards." />
            <NumberAt path={`${path}/ventilationCfmPerFt2`} />
          </>
        ) : null}
        {kind === "conditioned" ? null : (
          <>
            <NumberAt path={`${path}/houseToZonePressurePa`} />
            <NumberAt path={`${path}/houseToOutsidePressurePa`} />
            <NumberAt path={`${path}/regainFactor`} hint="0: nothing comes back to the rooms; 1: all of it does." />
            <NumberAt path={`${path}/unconditionedFactor`} />
          </>
        )}
      </Disclosure>
    </>
  );
}

function Run({ path, draft }: { path: string; draft: Draft }) {
  return (
    <div className={styles.pairs}>
      <TextAt path={`${path}/label`} />
      <ChoiceAt path={`${path}/side`} isRow />
      <ChoiceAt path={`${path}/placeId`} options={placeOptions(draft)} />
      <ChoiceAt path={`${path}/material`} />
      <NumberAt path={`${path}/lengthFt`} />
      <NumberAt path={`${path}/diameterIn`} />
      <NumberAt path={`${path}/areaFt2`} />
      <NumberAt path={`${path}/insulationRValue`} />
      <FlagAt path={`${path}/isBuried`} />
      {readAt(draft, `${path}/isBuried`) === true ? <NumberAt path={`${path}/buriedRValue`} /> : null}
    </div>
  );
}
