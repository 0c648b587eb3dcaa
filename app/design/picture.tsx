import type { ReactNode } from "react";
import { COMPACT_WIDTH, type Language, type Scene, type SceneOptions, WIDE_WIDTH } from "#lib/pictures/scene.ts";
import { DataTable } from "./data-table.tsx";
import styles from "./picture.module.css";
import { type ItemHref, SceneSvg } from "./scene-svg.tsx";
import { Disclosure } from "./worked-out.tsx";

const TABLE_TITLES: Readonly<Record<Language, string>> = { en: "The same as a table", es: "Lo mismo en una tabla" };

/**
 * A picture with its heading, its finding and the table that says the same. It is drawn twice, for a phone and for a
 * desk; the page shows the one that fits the room it has, so nothing is measured and nothing jumps.
 */
export function Picture({
  build,
  language = "en",
  headingLevel = 3,
  isHeadingHidden = false,
  itemHref,
  overlay,
  children,
}: {
  build: (options: SceneOptions) => Scene;
  language?: Language;
  headingLevel?: 2 | 3 | 4;
  isHeadingHidden?: boolean;
  itemHref?: ItemHref;
  /** What lies over the drawing of that width. */
  overlay?: (width: number) => ReactNode;
  /** What is done with the drawing, right below it. */
  children?: ReactNode;
}) {
  const wide = build({ width: WIDE_WIDTH, language });
  const compact = build({ width: COMPACT_WIDTH, language });
  const Heading = `h${headingLevel}` as const;
  return (
    <figure className={styles.picture} lang={language}>
      <figcaption>
        <Heading className={isHeadingHidden ? styles.hidden : styles.title}>{wide.title}</Heading>
        <p className={styles.finding}>{wide.finding}</p>
      </figcaption>
      <div className={styles.sheet}>
        <div className={styles.compact}>
          <SceneSvg scene={compact} itemHref={itemHref} />
          {overlay?.(COMPACT_WIDTH)}
        </div>
        <div className={styles.wide}>
          <SceneSvg scene={wide} itemHref={itemHref} />
          {overlay?.(WIDE_WIDTH)}
        </div>
      </div>
      {children}
      {wide.note ? <p className={styles.note}>{wide.note}</p> : null}
      <Disclosure title={TABLE_TITLES[language]}>
        <DataTable
          caption={wide.table.caption}
          columns={wide.table.columns}
          rows={wide.table.rows.map((cells, index) => ({ id: `${index} ${cells[0] ?? ""}`, cells }))}
        />
      </Disclosure>
    </figure>
  );
}
