"use client";

import { EmptyState } from "#app/design/empty-state.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import { LEAK_KIND_IDS, LEAK_KINDS, type LeakKindId } from "#lib/job/leak-kinds.ts";
import { type Draft, listAt, newId, textAt } from "../draft.ts";
import { EntryList } from "../entry-list.tsx";
import { choiceLabel } from "../field-words.ts";
import { ChoiceAt, FlagAt, NumberAt, TextAt } from "../fields.tsx";
import { NotesAt } from "../notes.tsx";
import styles from "../trip.module.css";
import { useTrip } from "../trip-context.ts";
import { placeOptions, systemOptions } from "./job-options.ts";

const kindOptions = LEAK_KIND_IDS.map((value) => ({ value, label: LEAK_KINDS[value].label }));
const isKind = (text: string | undefined): text is LeakKindId => text !== undefined && Object.hasOwn(LEAK_KINDS, text);

function leakName(site: Draft, index: number): string {
  const kind = textAt(site, "kind");
  return `${index + 1}. ${textAt(site, "label") ?? (isKind(kind) ? LEAK_KINDS[kind].label : "Leak")}`;
}

export function LeaksStep() {
  const { draft } = useTrip();
  return (
    <EntryList
      path="sites"
      title={leakName}
      addLabel="Add a leak"
      makeNew={(list) => nextLeak(draft, list)}
      empty={
        <EmptyState title="No leak tagged yet">
          Walk from the air handler outward: cabinet, plenums, take-offs, boots, returns. What the test reads and nobody
          has seen stays in the drawing as “not yet found”.
        </EmptyState>
      }
    >
      {(path, site) => <Leak path={path} site={site} />}
    </EntryList>
  );
}

/** One usually finds the next leak where one just was. */
function nextLeak(draft: Draft, list: readonly Draft[]): Draft {
  const last = list.at(-1);
  const outside = listAt(draft, "places").find((place) => place.kind !== "conditioned");
  return {
    id: newId(list, "leak"),
    systemId: last?.systemId ?? listAt(draft, "systems")[0]?.id ?? "",
    side: last?.side ?? "supply",
    placeId: last?.placeId ?? outside?.id ?? listAt(draft, "places")[0]?.id ?? "",
    kind: "boot-to-drywall",
  };
}

function Leak({ path, site }: { path: string; site: Draft }) {
  const { draft } = useTrip();
  const kind = textAt(site, "kind");
  return (
    <>
      <ChoiceAt
        path={`${path}/kind`}
        options={kindOptions}
        hint={isKind(kind) ? LEAK_KINDS[kind].tradeDescription : undefined}
        isRequired
      />
      <div className={styles.pairs}>
        <ChoiceAt path={`${path}/side`} isRow />
        <ChoiceAt path={`${path}/placeId`} options={placeOptions(draft)} isRequired />
        {listAt(draft, "systems").length > 1 ? (
          <ChoiceAt path={`${path}/systemId`} label="System" options={systemOptions(draft)} isRequired />
        ) : null}
        <TextAt path={`${path}/label`} />
      </div>
      <LeakSize path={path} site={site} />
      <ChoiceAt path={`${path}/reach`} isRow label="How easy it is to get at" />
      <NotesAt path={path} />
      <Disclosure title="Pressure pan, material, note">
        <NumberAt path={`${path}/panPressurePa`} hint="At this register, with the house at 50 Pa." />
        <FlagAt
          path={`${path}/isSuspectedAsbestos`}
          hint="If so, it is left alone until a licensed person has looked."
        />
        <TextAt path={`${path}/note`} label="Note for the crew" />
      </Disclosure>
    </>
  );
}

const sizeOptions = ["band", "gap", "estimate"].map((value) => ({ value, label: choiceLabel("from", value) }));
const bandOptions = ["hairline", "pencil-wide", "finger-wide", "hand-wide", "fully-open"].map((value) => ({
  value,
  label: choiceLabel("band", value),
}));

/** Its size by eye, with a tape, in cfm, or not at all: then the kind alone speaks. */
function LeakSize({ path, site }: { path: string; site: Draft }) {
  const { set } = useTrip();
  const from = textAt(site, "size/from");
  const start: Readonly<Record<string, Draft>> = {
    band: { from: "band", band: "pencil-wide" },
    gap: { from: "gap" },
    estimate: { from: "estimate" },
  };
  return (
    <div className={styles.pairs}>
      <ChoiceAt
        path={`${path}/size/from`}
        label="How its size is known"
        options={sizeOptions}
        isRequired={false}
        unknownLabel="Not judged"
        onChosen={(value) => set(`${path}/size`, value === undefined ? undefined : start[value])}
      />
      {from === "band" ? <ChoiceAt path={`${path}/size/band`} options={bandOptions} isRequired /> : null}
      {from === "gap" ? (
        <>
          <NumberAt path={`${path}/size/gapLengthIn`} />
          <NumberAt path={`${path}/size/gapWidthIn`} />
        </>
      ) : null}
      {from === "estimate" ? <NumberAt path={`${path}/size/estimateCfm25`} /> : null}
    </div>
  );
}
