import type { ReactNode } from "react";
import type { DocumentView, Section } from "../document-view.ts";
import type { Letterhead } from "../letterhead/letterhead.ts";
import { BlockHtml, NoticeHtml, PictureHtml } from "./blocks-html.tsx";
import { LetterheadHtml } from "./letterhead-html.tsx";
import { EARLY_FONTS, fontHref, PAGE_STYLES } from "./page-styles.ts";

export interface HtmlFrame {
  fingerprint: string;
  /** The word and the target of each link above the document, such as the PDF and the other language. */
  links: readonly { label: string; href: string; language?: string }[];
  skipLabel: string;
  /** The firm that the paper is from. */
  letterhead?: Letterhead | undefined;
  /** What the visitor has to know first, such as "accepted". */
  above?: ReactNode;
  /** What one can do: forms below the document. */
  below?: ReactNode;
}

/**
 * Any document as a page. What one can do stands after the plain sections; what only a checker reads is folded below.
 * It needs no script, no style sheet of the app and nobody else's server.
 */
export function DocumentHtml({ view, frame }: { view: DocumentView; frame: HtmlFrame }) {
  const around = { language: view.language, words: view.words };
  const plain = view.sections.filter(({ audience }) => audience === "homeowner");
  const technical = view.sections.filter(({ audience }) => audience === "technical");
  return (
    <html lang={view.locale}>
      {/* biome-ignore lint/style/noHeadElement: a page of its own, outside the app's layout */}
      <head>
        <meta charSet="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="robots" content="noindex" />
        <title>{view.title}</title>
        {/* The paper is the firm's and bears no mark of ours; without a word the browser would ask for one. */}
        <link rel="icon" href="data:," />
        {EARLY_FONTS.map((name) => (
          <link key={name} rel="preload" as="font" type="font/woff2" href={fontHref(name)} crossOrigin="" />
        ))}
        {/* biome-ignore lint/security/noDangerouslySetInnerHtml: our own style sheet; from outside only a color that was checked */}
        <style dangerouslySetInnerHTML={{ __html: stylesWith(frame.letterhead?.accentColor) }} />
      </head>
      <body>
        <a className="skip" href="#document">
          {frame.skipLabel}
        </a>
        <header>
          {frame.letterhead ? <LetterheadHtml letterhead={frame.letterhead} /> : null}
          <nav className="bar" aria-label={view.title}>
            {frame.links.map(({ label, href, language }) => (
              <a key={href} href={href} lang={language} hrefLang={language}>
                {label}
              </a>
            ))}
          </nav>
        </header>
        <main id="document">
          <ul className="facts">
            {view.facts.map((fact) => (
              <li key={fact}>{fact}</li>
            ))}
          </ul>
          <h1>{view.heading}</h1>
          {frame.above}
          {view.lead.map((text) => (
            <p key={text} className="lead">
              {text}
            </p>
          ))}
          {view.opening ? <PictureHtml picture={view.opening} isOpening {...around} /> : null}
          {view.notices.map((notice) => (
            <NoticeHtml key={notice.title} notice={{ ...notice }} isOnTop />
          ))}
          {plain.map((section) =>
            section.isFolded ? (
              <FoldedSection key={section.id} section={section} view={view} />
            ) : (
              <section key={section.id} aria-labelledby={section.id}>
                <h2 id={section.id}>{section.title}</h2>
                <Blocks section={section} view={view} />
              </section>
            ),
          )}
          {frame.below}
          {technical.map((section) => (
            <FoldedSection key={section.id} section={section} view={view} />
          ))}
        </main>
        <footer>
          <p>{view.footer}</p>
          <p>
            {view.words.fingerprint}
            <br />
            <span className="digest">{frame.fingerprint}</span>
          </p>
        </footer>
      </body>
    </html>
  );
}

const HEX_COLOR = /^#[0-9a-f]{6}$/;

/** The style sheet in the color of the firm, which is chosen for light paper; anything but a color is left out. */
function stylesWith(accentColor: string | undefined): string {
  return accentColor && HEX_COLOR.test(accentColor)
    ? `${PAGE_STYLES}@media print,(prefers-color-scheme:light){:root{--accent:${accentColor}}}`
    : PAGE_STYLES;
}

function FoldedSection({ section, view }: { section: Section; view: DocumentView }) {
  return (
    <details className="technical">
      <summary>
        <h2 id={section.id}>{section.title}</h2>
      </summary>
      <Blocks section={section} view={view} />
    </details>
  );
}

function Blocks({ section, view }: { section: Section; view: DocumentView }) {
  return section.blocks.map((block, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a section are in a fixed order
    <BlockHtml key={index} block={block} language={view.language} words={view.words} />
  ));
}
