import type { DocumentPhoto, DocumentView } from "./document-view.ts";

/** Every photo that a document shows, each once, by its hash. */
export function photosOfView({ sections }: DocumentView): string[] {
  const shown = sections.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === "photos" ? block.items.map(({ sha256 }) => sha256) : [])),
  );
  return [...new Set(shown)];
}

/**
 * The document with its pictures put in, to be laid out. What a document says names photos by their hash, so its
 * fingerprint holds the pictures without their bytes.
 */
export function withPhotos(view: DocumentView, hrefs: ReadonlyMap<string, string>): DocumentView {
  const filled = (photo: DocumentPhoto): DocumentPhoto => {
    const href = hrefs.get(photo.sha256);
    return href ? { ...photo, href } : photo;
  };
  return {
    ...view,
    sections: view.sections.map((section) => ({
      ...section,
      blocks: section.blocks.map((block) =>
        block.kind === "photos" ? { ...block, items: block.items.map(filled) } : block,
      ),
    })),
  };
}
