import type { DocumentPhoto } from "../document-view.ts";

/** Photos side by side, each with what it shows; of one that is not on this server only the words. */
export function PhotosHtml({ photos }: { photos: readonly DocumentPhoto[] }) {
  return (
    <ul className="photos">
      {photos.map(({ sha256, caption, href }) => (
        <li key={`${caption} ${sha256}`}>
          {/* biome-ignore lint/performance/noImgElement: a page of its own, with the picture inside it */}
          {href ? <img src={href} alt={caption} /> : null}
          {/* The words are the picture's name already. */}
          <span aria-hidden={href ? true : undefined}>{caption}</span>
        </li>
      ))}
    </ul>
  );
}
