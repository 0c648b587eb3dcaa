import { type Block, type DocumentView, openBlocks, type Section } from "#lib/documents/document-view.ts";

/** Words that stand in nearly every English sentence and in no Spanish one. */
export const ENGLISH =
  /(?<!\p{L})(the|of|and|is|with|for|from|was|were|are|by|at|that|this|these|its|it|not|be|to|than|when|which|as|each|your|you|we|leaks?|ducts?|repairs?|house|heat|air|before|after|work)(?!\p{L})/iu;

/** Every sentence of one block; pictures speak through their own words and are left out. */
export function blockText(block: Block): string[] {
  switch (block.kind) {
    case "text":
    case "subheading":
      return [block.text];
    case "list":
      return [...block.items];
    case "figures":
      return block.items.flatMap(({ label, value, doubt }) => [label, value, ...(doubt ? [doubt] : [])]);
    case "table":
      return [
        block.table.caption,
        ...block.table.columns.map(({ label }) => label),
        ...block.table.rows.flatMap((row) => [...row]),
      ];
    case "options":
      return block.options.flatMap(({ title, price, summary, lines }) => [
        title,
        price,
        summary,
        ...lines.flatMap(({ label, value }) => [label, value]),
      ]);
    case "notice":
      return [block.notice.title, block.notice.text];
    case "photos":
      return block.items.map(({ caption }) => caption);
    case "picture":
      return [];
    case "more":
      return [block.label, ...block.blocks.flatMap(blockText)];
  }
}

export const sectionText = ({ title, blocks }: Section): string[] => [title, ...blocks.flatMap(blockText)];

export const sectionOf = (view: DocumentView, id: string): Section => {
  const section = view.sections.find((each) => each.id === id);
  if (!section) throw new Error(`No section ${id}`);
  return section;
};

/** What a homeowner reads as sentences: no tables, figures or technical parts. */
export function homeownerSentences(view: DocumentView): string[] {
  const prose = view.sections
    .filter(({ audience }) => audience === "homeowner")
    .flatMap(({ blocks }) => openBlocks(blocks))
    .filter(({ kind }) => kind === "text" || kind === "list" || kind === "notice")
    .flatMap(blockText);
  return [view.heading, ...view.lead, ...view.notices.flatMap(({ title, text }) => [title, text]), ...prose].map(
    (text) => (/[.!?:]$/.test(text) ? text : `${text}.`),
  );
}
