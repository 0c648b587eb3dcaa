import type { Letterhead } from "../letterhead/letterhead.ts";

/** The firm's head on a page: its logo or its name, and a rule in its color. */
export function LetterheadHtml({ letterhead: { name, detail, logoHref } }: { letterhead: Letterhead }) {
  return (
    <div className="firm">
      {logoHref ? (
        // biome-ignore lint/performance/noImgElement: a page of its own, and the picture is in the address
        <img src={logoHref} alt={name} />
      ) : (
        <p className="strong">{name}</p>
      )}
      {detail ? <p>{detail}</p> : null}
    </div>
  );
}
