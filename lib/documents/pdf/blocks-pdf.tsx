import { Text, View } from "@react-pdf/renderer";
import type { Language } from "#lib/pictures/scene.ts";
import { DOCUMENT_FONTS } from "../document-fonts.ts";
import { type DocumentPicture, hasOwnTable, pictureScene } from "../document-picture.ts";
import type { Block, Figure, FrameWords, Notice, OptionCard } from "../document-view.ts";
import { ScenePdf } from "../scene-pdf.tsx";
import { STYLES } from "./pdf-theme.ts";
import { PhotosPdf } from "./photos-pdf.tsx";
import { TablePdf } from "./table-pdf.tsx";

/** Pictures are drawn at the width of a desk and set a little smaller, so that their letters stay near 12 points. */
const SCENE_WIDTH = 560;
const SCENE_FONTS = { sans: DOCUMENT_FONTS.sans, mono: DOCUMENT_FONTS.mono };

interface Surroundings {
  widthPoints: number;
  language: Language;
  words: FrameWords;
}

export function BlockPdf({ block, ...around }: { block: Block } & Surroundings) {
  switch (block.kind) {
    case "text":
      return <Text style={block.isStrong ? [STYLES.text, STYLES.strong] : STYLES.text}>{block.text}</Text>;
    case "subheading":
      return (
        <Text style={STYLES.subheading} minPresenceAhead={60}>
          {block.text}
        </Text>
      );
    case "list":
      return (
        <>
          {block.items.slice(0, -ITEMS_KEPT).map((item) => (
            <ItemPdf key={item} item={item} />
          ))}
          <View wrap={false}>
            {block.items.slice(-ITEMS_KEPT).map((item) => (
              <ItemPdf key={item} item={item} />
            ))}
          </View>
        </>
      );
    case "figures":
      return <FiguresPdf items={block.items} />;
    case "table":
      return <TablePdf table={block.table} widthPoints={around.widthPoints} />;
    case "picture":
      return (
        <>
          <PicturePdf picture={block.picture} {...around} />
          <PictureTablePdf picture={block.picture} {...around} />
        </>
      );
    case "photos":
      return <PhotosPdf photos={block.items} widthPoints={around.widthPoints} />;
    case "options":
      return <OptionsPdf options={block.options} />;
    case "notice":
      return <NoticePdf notice={block.notice} />;
    case "more":
      return (
        <>
          {block.blocks.map((inner, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a section are in a fixed order
            <BlockPdf key={index} block={inner} {...around} />
          ))}
        </>
      );
  }
}

/** So many items at the end of a list stay together: no page begins with its last one alone. */
const ITEMS_KEPT = 4;

function ItemPdf({ item }: { item: string }) {
  return (
    <View style={STYLES.listRow} wrap={false}>
      <Text style={STYLES.listMark}>•</Text>
      <Text style={STYLES.listText}>{item}</Text>
    </View>
  );
}

export function PicturePdf({ picture, widthPoints, language }: { picture: DocumentPicture } & Surroundings) {
  const scene = pictureScene(picture, { width: SCENE_WIDTH, language });
  return (
    <View style={STYLES.picture} wrap={false}>
      <Text style={STYLES.pictureTitle}>{scene.title}</Text>
      <Text style={STYLES.text}>{scene.finding}</Text>
      <ScenePdf scene={scene} widthPoints={widthPoints} fonts={SCENE_FONTS} />
      {scene.note ? <Text style={STYLES.pictureNote}>{scene.note}</Text> : null}
    </View>
  );
}

/** The same as the picture, in numbers. */
export function PictureTablePdf({
  picture,
  widthPoints,
  language,
  words,
}: { picture: DocumentPicture } & Surroundings) {
  if (!hasOwnTable(picture)) return null;
  const { table } = pictureScene(picture, { width: SCENE_WIDTH, language });
  return <TablePdf table={{ ...table, caption: `${words.tableOf}: ${table.caption}` }} widthPoints={widthPoints} />;
}

/** The tallest that the first picture may stand, so that it stays on the first page with the verdict. */
const OPENING_HEIGHT_POINTS = { alone: 290, besideLink: 215 } as const;

/** The picture under the verdict, without a heading of its own. */
export function OpeningPdf({
  picture,
  widthPoints,
  language,
  isBesideLink,
}: { picture: DocumentPicture; isBesideLink: boolean } & Surroundings) {
  const scene = pictureScene(picture, { width: SCENE_WIDTH, language });
  const tallest = OPENING_HEIGHT_POINTS[isBesideLink ? "besideLink" : "alone"];
  const fitting = Math.min(widthPoints, (tallest * scene.width) / scene.height);
  return (
    <View style={STYLES.picture} wrap={false}>
      <View style={STYLES.centered}>
        <ScenePdf scene={scene} widthPoints={fitting} fonts={SCENE_FONTS} />
      </View>
      {scene.note ? <Text style={STYLES.pictureNote}>{scene.note}</Text> : null}
    </View>
  );
}

export function NoticePdf({ notice: { tone, title, text } }: { notice: Notice }) {
  const style = { caution: STYLES.notice, note: STYLES.noticeNote, invented: STYLES.noticeInvented }[tone];
  return (
    <View style={style} wrap={false}>
      <Text style={STYLES.noticeTitle}>{title}</Text>
      <Text style={STYLES.plain}>{text}</Text>
    </View>
  );
}

/** Rows of a fixed number of items, each row whole: the library breaks a wrapping row of flexible boxes badly. */
function rowsOf<Item>(items: readonly Item[], perRow: number): Item[][] {
  return Array.from({ length: Math.ceil(items.length / perRow) }, (_, row) =>
    items.slice(row * perRow, (row + 1) * perRow),
  );
}

function FiguresPdf({ items }: { items: readonly Figure[] }) {
  return (
    <View style={STYLES.figures}>
      {rowsOf(items, 3).map((row) => (
        <View key={row[0]?.label} style={STYLES.figureRow} wrap={false}>
          {row.map(({ label, value, doubt }) => (
            <View key={label} style={STYLES.figure}>
              <Text style={STYLES.figureLabel}>{label}</Text>
              <Text style={STYLES.figureValue}>{value}</Text>
              {doubt ? <Text style={STYLES.figureDoubt}>{doubt}</Text> : null}
            </View>
          ))}
        </View>
      ))}
    </View>
  );
}

export const CARDS_PER_ROW = 2;

function OptionsPdf({ options }: { options: readonly OptionCard[] }) {
  return (
    <View style={STYLES.cards}>
      {rowsOf(options, CARDS_PER_ROW).map((row) => (
        <View key={row[0]?.id} style={STYLES.cardRow} wrap={false}>
          {row.map((option) => (
            <CardPdf key={option.id} option={option} />
          ))}
        </View>
      ))}
    </View>
  );
}

function CardPdf({ option }: { option: OptionCard }) {
  return (
    <View style={option.isRecommended ? [STYLES.card, STYLES.cardAdvised] : STYLES.card}>
      {option.isRecommended ? <Text style={STYLES.cardMark}>{option.recommendedLabel}</Text> : null}
      <Text style={STYLES.cardTitle}>{option.title}</Text>
      <Text style={STYLES.cardPrice}>{option.price}</Text>
      <Text style={STYLES.cardSummary}>{option.summary}</Text>
      {option.lines.map(({ label, value }) => (
        <View key={label} style={STYLES.cardLine}>
          <Text style={STYLES.cardLabel}>{label}</Text>
          <Text style={STYLES.cardValue}>{value}</Text>
        </View>
      ))}
    </View>
  );
}
