import { COMPACT_WIDTH, type Language, WIDE_WIDTH } from "#lib/pictures/scene.ts";
import { type DocumentPicture, hasOwnTable, pictureScene } from "../document-picture.ts";
import type { Block, DocumentTable, FrameWords, Notice, OptionCard } from "../document-view.ts";
import { PhotosHtml } from "./photos-html.tsx";
import { SceneHtml } from "./scene-html.tsx";

interface Surroundings {
  language: Language;
  words: FrameWords;
}

export function BlockHtml({ block, ...around }: { block: Block } & Surroundings) {
  switch (block.kind) {
    case "text":
      return (
        <p className={block.isStrong ? "strong" : undefined} lang={block.language}>
          {block.text}
        </p>
      );
    case "subheading":
      return <h3>{block.text}</h3>;
    case "list":
      return (
        <ul lang={block.language}>
          {block.items.map((item) => (
            <li key={item}>{item}</li>
          ))}
        </ul>
      );
    case "figures":
      return (
        <dl className="figures">
          {block.items.map(({ label, value, doubt }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>
                <b>{value}</b> {doubt ? <small>{doubt}</small> : null}
              </dd>
            </div>
          ))}
        </dl>
      );
    case "table":
      return <TableHtml table={block.table} />;
    case "picture":
      return <PictureHtml picture={block.picture} {...around} />;
    case "photos":
      return <PhotosHtml photos={block.items} />;
    case "options":
      return (
        <div className="cards">
          {block.options.map((option) => (
            <Card key={option.id} option={option} />
          ))}
        </div>
      );
    case "notice":
      return <NoticeHtml notice={block.notice} />;
    case "more":
      return (
        <details className="more">
          <summary>{block.label}</summary>
          {block.blocks.map((inner, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a section are in a fixed order
            <BlockHtml key={index} block={inner} {...around} />
          ))}
        </details>
      );
  }
}

/** A wide table scrolls inside its own box, which the keyboard can reach; the page itself never scrolls sideways. */
export function TableHtml({ table }: { table: DocumentTable }) {
  const { caption, columns, rows } = table;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard
    <section className="sheet" tabIndex={0} aria-label={caption}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {columns.map(({ label, isNumeric }) => (
              <th key={label} scope="col" className={isNumeric ? "number" : undefined}>
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((cells, row) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows of a document are in a fixed order and may repeat
            <tr key={row} className={table.hasTotal && row === rows.length - 1 ? "total" : undefined}>
              {cells.map((cell, column) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: cells are in the order of the columns
                <td key={column} className={columns[column]?.isNumeric ? "number" : undefined}>
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** The picture twice, for a phone and for a desk, of which the page shows one; then the same as a table. */
export function PictureHtml({
  picture,
  language,
  words,
  isOpening = false,
}: { picture: DocumentPicture; isOpening?: boolean } & Surroundings) {
  const wide = pictureScene(picture, { width: WIDE_WIDTH, language });
  const compact = pictureScene(picture, { width: COMPACT_WIDTH, language });
  return (
    <figure>
      {isOpening ? null : (
        <figcaption>
          <h3>{wide.title}</h3>
          <p>{wide.finding}</p>
        </figcaption>
      )}
      <SceneHtml scene={compact} className="compact" />
      <SceneHtml scene={wide} className="wide" />
      {wide.note ? <p className="note">{wide.note}</p> : null}
      {hasOwnTable(picture) ? (
        <details>
          <summary>{words.tableOf}</summary>
          <TableHtml table={wide.table} />
        </details>
      ) : null}
    </figure>
  );
}

/** A caution is a heading of its own inside a section; above all sections it is no heading. */
export function NoticeHtml({ notice: { tone, title, text }, isOnTop = false }: { notice: Notice; isOnTop?: boolean }) {
  return (
    <div className={`notice ${tone}`}>
      {tone === "caution" && !isOnTop ? <h3>{title}</h3> : <p className="strong">{title}</p>}
      <p>{text}</p>
    </div>
  );
}

function Card({ option }: { option: OptionCard }) {
  return (
    <div className={option.isRecommended ? "card advised" : "card"}>
      {option.isRecommended ? <p className="mark">{option.recommendedLabel}</p> : null}
      <div className="top">
        <h3>{option.title}</h3>
        <p className="price">{option.price}</p>
      </div>
      <p className="summary">{option.summary}</p>
      <dl>
        {option.lines.map(({ label, value }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
