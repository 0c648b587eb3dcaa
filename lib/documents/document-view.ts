import type { Language } from "#lib/pictures/scene.ts";
import type { DocumentPicture } from "./document-picture.ts";

/**
 * A document as data: every sentence and every formatted number, in the order in which it is read. Page and paper only
 * lay it out, so that the two can never say different things. Plain JSON, so that it can be kept as it was issued.
 */
export interface DocumentView {
  kind: "proposal" | "crew-sheet" | "retest-sheet" | "certificate";
  language: Language;
  /** For `lang` attributes and `Intl`, such as "en-US". */
  locale: string;
  /** What the file and the browser's tab are called. */
  title: string;
  /** Small print above the heading: for which house, by whom, when. */
  facts: readonly string[];
  heading: string;
  lead: readonly string[];
  /** The picture under the lead: the house itself. */
  opening?: DocumentPicture;
  notices: readonly Notice[];
  sections: readonly Section[];
  /** At the foot of every page. */
  footer: string;
  /** Date of the document as it is kept in the file, YYYY-MM-DD. */
  isoDate: string;
  author: string;
  /** Words that only the frame around the document needs. */
  words: FrameWords;
}

export interface FrameWords {
  page: string;
  of: string;
  contents: string;
  tableOf: string;
  fingerprint: string;
  linkHint: string;
}

export interface Section {
  id: string;
  title: string;
  /** Technical sections are for those who check; plain words are promised for the others. */
  audience: "homeowner" | "technical";
  /** On the page only its title stands until it is opened; paper has it open. */
  isFolded?: boolean;
  blocks: readonly Block[];
}

export type Block =
  | { kind: "text"; text: string; isStrong?: boolean; language?: "en" }
  | { kind: "subheading"; text: string }
  | { kind: "list"; items: readonly string[]; language?: "en" }
  | { kind: "figures"; items: readonly Figure[] }
  | { kind: "table"; table: DocumentTable; language?: "en" }
  | { kind: "picture"; picture: DocumentPicture }
  | { kind: "photos"; items: readonly DocumentPhoto[] }
  | { kind: "options"; options: readonly OptionCard[] }
  | { kind: "notice"; notice: Notice }
  /** Detail that the page folds under a line to press; paper has it open, without that line. */
  | { kind: "more"; label: string; blocks: readonly Block[] };

/** The blocks in reading order with what is folded laid open, as paper has them. */
export const openBlocks = (blocks: readonly Block[]): Block[] =>
  blocks.flatMap((block) => (block.kind === "more" ? openBlocks(block.blocks) : [block]));

/** Detail to fold on the page; nothing where there is none. */
export const more = (label: string, blocks: readonly Block[]): Block[] =>
  blocks.length === 0 ? [] : [{ kind: "more", label, blocks }];

/** A number that matters, with its doubt beside it. */
export interface Figure {
  label: string;
  value: string;
  doubt?: string;
}

export interface DocumentTable {
  caption: string;
  columns: readonly { label: string; isNumeric?: boolean }[];
  rows: readonly (readonly string[])[];
  /** The last row is a sum. */
  hasTotal?: boolean;
}

export interface Notice {
  tone: "note" | "caution" | "invented";
  title: string;
  text: string;
}

/** A photo by its hash, and what it shows. */
export interface DocumentPhoto {
  sha256: string;
  caption: string;
  /** The picture itself as a data address, put in only to be laid out (see with-photos.ts). */
  href?: string;
}

/** One way to do the work, priced. */
export interface OptionCard {
  id: string;
  title: string;
  summary: string;
  isRecommended: boolean;
  recommendedLabel: string;
  price: string;
  lines: readonly { label: string; value: string }[];
}
