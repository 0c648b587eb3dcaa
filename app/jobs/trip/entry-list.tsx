"use client";

import { type ReactNode, useState } from "react";
import { Button } from "#app/design/button.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import { type Draft, listAt } from "./draft.ts";
import styles from "./trip.module.css";
import { useTrip } from "./trip-context.ts";

const keyOf = (entry: Draft, index: number): string => (typeof entry.id === "string" ? entry.id : String(index));

/**
 * A list of things of one kind: each a card with its name, removable, and a button that adds the next one. Where there
 * are facts to show, what was entered before folds to its name and its facts, so that a long list stays one screen.
 */
export function EntryList({
  path,
  title,
  addLabel,
  makeNew,
  keepReason,
  facts,
  empty,
  headingLevel = 2,
  children,
}: {
  path: string;
  title: (entry: Draft, index: number) => string;
  addLabel?: string;
  makeNew?: (list: readonly Draft[]) => Draft;
  /** Why an entry cannot be removed just now. */
  keepReason?: (entry: Draft, index: number) => string | undefined;
  /** What an entry says in one line while it is folded. */
  facts?: (entry: Draft, index: number) => string;
  empty?: ReactNode;
  headingLevel?: 2 | 3 | 4;
  children: (entryPath: string, entry: Draft, index: number) => ReactNode;
}) {
  const { draft, set } = useTrip();
  const Heading = `h${headingLevel}` as const;
  const list = listAt(draft, path);
  const [enteredBefore] = useState(() => new Set(list.map(keyOf)));
  return (
    <div className={styles.entries}>
      {list.length === 0 ? empty : null}
      {list.map((entry, index) => {
        const name = title(entry, index);
        const reason = keepReason?.(entry, index);
        const removal =
          reason === undefined ? (
            <Button
              variant="quiet"
              onClick={() =>
                set(
                  path,
                  list.filter((each) => each !== entry),
                )
              }
            >
              Remove<span className={styles.hidden}> {name}</span>
            </Button>
          ) : (
            <span className={styles.small}>{reason}</span>
          );
        const key = keyOf(entry, index);
        const fields = children(`${path}/${index}`, entry, index);
        if (facts)
          return (
            <section key={key} className={styles.folding} aria-label={name}>
              <Disclosure
                isOpen={!enteredBefore.has(key)}
                title={
                  <span className={styles.leakName}>
                    <strong>{name}</strong>
                    <span className={styles.leakFacts}>{facts(entry, index)}</span>
                  </span>
                }
              >
                {fields}
                {removal}
              </Disclosure>
            </section>
          );
        return (
          <section key={key} className={styles.entry} aria-label={name}>
            <div className={styles.entryHead}>
              <Heading>{name}</Heading>
              {removal}
            </div>
            {fields}
          </section>
        );
      })}
      {addLabel && makeNew ? (
        <Button variant="secondary" onClick={() => set(path, [...list, makeNew(list)])}>
          {addLabel}
        </Button>
      ) : null}
    </div>
  );
}
