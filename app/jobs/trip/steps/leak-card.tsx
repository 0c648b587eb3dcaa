"use client";

import { Button } from "#app/design/button.tsx";
import { PlainSelect } from "#app/design/plain-select.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import { LEAK_KIND_IDS, LEAK_KINDS, type LeakKindId, SIZE_BANDS } from "#lib/job/leak-kinds.ts";
import { type Draft, listAt, textAt } from "../draft.ts";
import { choiceLabel } from "../field-words.ts";
import { ChoiceAt, FlagAt, NumberAt, TextAt } from "../fields.tsx";
import { NotesAt } from "../notes.tsx";
import styles from "../trip.module.css";
import { useTrip } from "../trip-context.ts";
import { placeOptions, runLeakOptions, systemOptions } from "./job-options.ts";
import { LeakPhotos } from "./leak-photos.tsx";

const isKind = (text: string | undefined): text is LeakKindId => text !== undefined && Object.hasOwn(LEAK_KINDS, text);

/** In a manufactured home crossover and belly come first: they are what one goes under the house for. */
function kindOptions(isManufactured: boolean) {
  const first = isManufactured ? (["crossover", "belly"] as const) : [];
  return [...first, ...LEAK_KIND_IDS.filter((id) => !first.some((each) => each === id))].map((value) => ({
    value,
    label: LEAK_KINDS[value].label,
  }));
}

/** One leak: folded to its name and its size as it stands now, open to be described. */
export function LeakCard({
  path,
  site,
  number,
  isOpen,
  onMove,
  onRemove,
}: {
  path: string;
  site: Draft;
  number: number;
  isOpen: boolean;
  /** Absent where there is no drawing to put it on. */
  onMove: (() => void) | undefined;
  onRemove: () => void;
}) {
  const { draft, walk } = useTrip();
  const kind = textAt(site, "kind");
  const place = placeOptions(draft).find(({ value }) => value === site.placeId)?.label;
  const name = textAt(site, "label") ?? (isKind(kind) ? LEAK_KINDS[kind].label : "Leak");
  const found = walk?.leaks[String(site.id)];
  const photos = listAt(site, "photos").length;
  return (
    <li id={`leak-${site.id}`} className={styles.leak}>
      <Disclosure
        isOpen={isOpen}
        title={
          <span className={styles.leakName}>
            <strong>
              {number}. {name}
            </strong>
            <span className={styles.leakFacts}>
              {[textAt(site, "side") === "return" ? "return" : "supply", place?.toLowerCase()]
                .filter(Boolean)
                .join(", ")}
              {found ? ` · ${found.size}, ${found.doubt}` : ""}
              {photos > 0 ? ` · ${photos} ${photos === 1 ? "photo" : "photos"}` : ""}
            </span>
          </span>
        }
      >
        <ChoiceAt
          path={`${path}/kind`}
          options={kindOptions(textAt(draft, "house/kind") === "manufactured")}
          hint={isKind(kind) ? LEAK_KINDS[kind].tradeDescription : undefined}
          isRequired
        />
        <LeakSize path={path} site={site} />
        <ChoiceAt path={`${path}/reach`} isRow label="How easy it is to get at" />
        <NumberAt path={`${path}/panPressurePa`} hint="At this register, with the house at 50 Pa." />
        <LeakPhotos path={path} site={site} number={number} />
        <NotesAt path={path} />
        <Disclosure title="Side, place, name, material, note">
          <div className={styles.pairs}>
            <ChoiceAt path={`${path}/side`} isRow />
            <ChoiceAt path={`${path}/placeId`} options={placeOptions(draft)} isRequired />
            {listAt(draft, "systems").length > 1 ? (
              <ChoiceAt path={`${path}/systemId`} label="System" options={systemOptions(draft)} isRequired />
            ) : null}
            <TextAt path={`${path}/label`} />
            <RunOfLeak path={path} site={site} />
          </div>
          <FlagAt
            path={`${path}/isSuspectedAsbestos`}
            hint="If so, it is left alone until a licensed person has looked."
          />
          <TextAt path={`${path}/note`} label="Note for the crew" />
        </Disclosure>
        <div className={styles.leakActions}>
          {onMove ? (
            <Button variant="quiet" onClick={onMove}>
              Put leak {number} elsewhere on the drawing
            </Button>
          ) : null}
          <Button variant="quiet" onClick={onRemove}>
            Remove leak {number}
          </Button>
        </div>
      </Disclosure>
    </li>
  );
}

/** The leak that stands for the run or return path that this one is on, where there is one to choose. */
function RunOfLeak({ path, site }: { path: string; site: Draft }) {
  const { draft } = useTrip();
  const options = runLeakOptions(draft, site);
  if (options.length === 0) return null;
  return (
    <ChoiceAt
      path={`${path}/partOfSiteId`}
      options={options}
      unknownLabel="None of them"
      hint="That leak is repaired first, and new duct there closes this one too."
    />
  );
}

const SIZE_OPTIONS = [
  { value: "", label: "Not judged" },
  ...SIZE_BANDS.map((band) => ({ value: `band ${band}`, label: choiceLabel("band", band) })),
  { value: "gap", label: "Measured with a tape" },
  { value: "estimate", label: "As a flow" },
];

/** Its size by eye in one choice, with a tape, in cfm, or not at all: then the kind alone speaks. */
function LeakSize({ path, site }: { path: string; site: Draft }) {
  const { set } = useTrip();
  const [from, band] = [textAt(site, "size/from"), textAt(site, "size/band")];
  const value = from === "band" ? `band ${band}` : (from ?? "");
  const choose = (chosen: string) => {
    const [next = "", nextBand] = chosen.split(" ");
    set(`${path}/size`, next === "" ? undefined : { from: next, ...(nextBand ? { band: nextBand } : {}) });
  };
  return (
    <div className={styles.pairs}>
      <PlainSelect
        id={`${path}/size/from`}
        label="Gap as it looks"
        options={SIZE_OPTIONS}
        value={value}
        onChange={(event) => choose(event.currentTarget.value)}
      />
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
