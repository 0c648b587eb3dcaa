import type { Letterhead } from "#lib/documents/letterhead/letterhead.ts";
import { PAPER_INKS } from "#lib/pictures/paper-inks.ts";
import styles from "./organization.module.css";

/** The head of the firm's papers as they look, on white in the dark too. */
export function LetterheadSample({ letterhead }: { letterhead: Letterhead }) {
  const { name, detail, logoHref, accentColor = PAPER_INKS.accent } = letterhead;
  return (
    <figure className={styles.sample}>
      <div className={styles.sheet} style={{ background: PAPER_INKS.paper, color: PAPER_INKS.ink }}>
        <div className={styles.firm} style={{ borderColor: accentColor }}>
          {logoHref ? (
            // biome-ignore lint/performance/noImgElement: the picture is in the address, there is nothing to optimize
            <img src={logoHref} alt={name} />
          ) : (
            <strong>{name}</strong>
          )}
          <span style={{ color: PAPER_INKS.soft }}>{detail}</span>
        </div>
        <p>
          <span style={{ color: accentColor, textDecoration: "underline" }}>A link</span>{" "}
          <span className={styles.pressed} style={{ background: accentColor }}>
            A button
          </span>
        </p>
      </div>
      <figcaption>The head of your papers</figcaption>
    </figure>
  );
}
