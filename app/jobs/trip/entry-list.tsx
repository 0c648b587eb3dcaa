"use client";

import type { ReactNode } from "react";
import { Button } from "#app/design/button.tsx";
import { type Draft, listAt } from "./draft.ts";
import styles from "./trip.module.css";
import { useTrip } from "./trip-context.ts";

/** A list of things of one kind: each a card with its name, removable, and a button that adds the next one. */
export function EntryList({
  path,
  title,
  addLabel,
  makeNew,
  keepReason,
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
  empty?: ReactNode;
  headingLevel?: 2 | 3 | 4;
  children: (entryPath: string, entry: Draft, index: number) => ReactNode;
}) {
  const { draft, set } = useTrip();
  const Heading = `h${headingLevel}` as const;
  const list = listAt(draft, path);
  return (
    <div className={styles.entries}>
      {list.length === 0 ? empty : null}
      {list.map((entry, index) => {
        const name = title(entry, index);
        const reason = keepReason?.(entry, index);
        return (
          <section key={typeof entry.id === "string" ? entry.id : index} className={styles.entry} aria-label={name}>
            <div className={styles.entryHead}>
              <Heading>{name}</Heading>
              {reason === undefined ? (
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
              )}
            </div>
            {children(`${path}/${index}`, entry, index)}
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
