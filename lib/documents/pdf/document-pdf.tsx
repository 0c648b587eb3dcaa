import { Document, Link, Page, Text, View } from "@react-pdf/renderer";
import { Fragment } from "react";
import { type Block, type DocumentView, openBlocks, type Section } from "../document-view.ts";
import type { Letterhead } from "../letterhead/letterhead.ts";
import { BlockPdf, CARDS_PER_ROW, NoticePdf, OpeningPdf, PicturePdf, PictureTablePdf } from "./blocks-pdf.tsx";
import { LetterheadPdf } from "./letterhead-pdf.tsx";
import { PAPERS, type Paper } from "./paper.ts";
import { contentWidth, STYLES } from "./pdf-theme.ts";
import { QrPdf } from "./qr-pdf.tsx";

export interface PdfFrame {
  paper: Paper;
  /** The firm that the paper is from. */
  letterhead?: Letterhead | undefined;
  /** SHA-256 that names this very paper; printed whole near the end and short at every foot. */
  fingerprint: string;
  /** Where the same can be read on a phone; the accessible form of the document. */
  link?: string;
}

/** A heading takes at least this much of its section along to the same page. */
const HEADING_KEEPS_POINTS = 110;

/** Any document on paper: it only lays out what the view says. */
export function DocumentPdf({ view, frame }: { view: DocumentView; frame: PdfFrame }) {
  const date = new Date(`${view.isoDate}T12:00:00Z`);
  const { widthPoints, heightPoints } = PAPERS[frame.paper];
  // Before the last section, so that it never stands on a page of its own.
  const last = view.sections.at(-1)?.id;
  const fingerprint = (
    <View style={STYLES.section} wrap={false}>
      <Text style={STYLES.small}>{view.words.fingerprint}</Text>
      <Text style={STYLES.digest}>{frame.fingerprint}</Text>
    </View>
  );
  return (
    <Document
      title={view.title}
      author={view.author || undefined}
      subject={view.heading}
      language={view.locale}
      creator="Ductmend"
      producer="Ductmend"
      creationDate={date}
      modificationDate={date}
      pageMode="useOutlines"
    >
      <Page size={[widthPoints, heightPoints]} style={STYLES.page} bookmark={view.title}>
        {frame.letterhead ? <LetterheadPdf letterhead={frame.letterhead} /> : null}
        {view.facts.map((fact) => (
          <Text key={fact} style={STYLES.facts}>
            {fact}
          </Text>
        ))}
        <Text style={STYLES.heading}>{view.heading}</Text>
        {view.lead.map((text) => (
          <Text key={text} style={STYLES.lead}>
            {text}
          </Text>
        ))}
        {view.opening ? (
          <OpeningPdf
            picture={view.opening}
            isBesideLink={frame.link !== undefined}
            widthPoints={contentWidth(frame.paper)}
            language={view.language}
            words={view.words}
          />
        ) : null}
        {view.notices.map((notice) => (
          <NoticePdf key={notice.title} notice={notice} />
        ))}
        {frame.link ? <LinkToPage link={frame.link} hint={view.words.linkHint} /> : null}
        {view.sections.map((section) => (
          <Fragment key={section.id}>
            {section.id === last ? fingerprint : null}
            <SectionPdf section={section} view={view} paper={frame.paper} />
          </Fragment>
        ))}
        {last === undefined ? fingerprint : null}
        <Footer view={view} fingerprint={frame.fingerprint} />
      </Page>
    </Document>
  );
}

function SectionPdf({ section, view, paper }: { section: Section; view: DocumentView; paper: Paper }) {
  const { kept, rest } = headOf(openBlocks(section.blocks));
  // A heading with a picture or cards of its own stands on its own feet.
  const hasMore = kept.some(({ kind }) => kind !== "text");
  // The library makes a bookmark of any element; its types know it on pages only.
  const bookmark = { bookmark: section.title };
  const around = { widthPoints: contentWidth(paper), language: view.language, words: view.words };
  return (
    <>
      <View
        style={STYLES.section}
        wrap={false}
        minPresenceAhead={hasMore ? undefined : HEADING_KEEPS_POINTS}
        {...bookmark}
      >
        <Text style={STYLES.sectionTitle}>{section.title}</Text>
        {kept.map((block) =>
          block.kind === "picture" ? (
            <PicturePdf key={block.kind} picture={block.picture} {...around} />
          ) : (
            <BlockPdf key={block.kind} block={block} {...around} />
          ),
        )}
      </View>
      {kept.map((block) =>
        block.kind === "picture" ? <PictureTablePdf key={block.kind} picture={block.picture} {...around} /> : null,
      )}
      {rest.map((block, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a section are in a fixed order
        <BlockPdf key={index} block={block} {...around} />
      ))}
    </>
  );
}

/**
 * What stays with a heading whatever the page: its first sentence, and the picture or the first row of cards that
 * follows, which the library would move to the next page alone and leave the heading behind.
 */
function headOf(blocks: readonly Block[]): { kept: Block[]; rest: Block[] } {
  const [first] = blocks;
  const kept = first?.kind === "text" ? [first] : [];
  const [next, ...after] = blocks.slice(kept.length);
  if (next?.kind === "picture") return { kept: [...kept, next], rest: after };
  if (next?.kind === "options") {
    const row = { ...next, options: next.options.slice(0, CARDS_PER_ROW) };
    const others = { ...next, options: next.options.slice(CARDS_PER_ROW) };
    return { kept: [...kept, row], rest: others.options.length > 0 ? [others, ...after] : after };
  }
  return { kept, rest: blocks.slice(kept.length) };
}

function LinkToPage({ link, hint }: { link: string; hint: string }) {
  return (
    <View style={STYLES.link} wrap={false}>
      <QrPdf text={link} sizePoints={76} />
      <View style={{ flex: 1, paddingLeft: 8 }}>
        <Text style={STYLES.small}>{hint}</Text>
        <Link src={link} style={STYLES.digest}>
          {link}
        </Link>
      </View>
    </View>
  );
}

/** Two texts fixed to the sheet itself: the library loses a page number inside another fixed box. */
function Footer({ view, fingerprint }: { view: DocumentView; fingerprint: string }) {
  const { page, of } = view.words;
  return (
    <>
      <Text style={[STYLES.footer, STYLES.footerLeft]} fixed>
        {`${view.footer} · ${fingerprint.slice(0, 12)}`}
      </Text>
      <Text
        style={[STYLES.footer, STYLES.footerRight]}
        fixed
        render={({ pageNumber, totalPages }) => `${page} ${pageNumber} ${of} ${totalPages}`}
      />
    </>
  );
}
