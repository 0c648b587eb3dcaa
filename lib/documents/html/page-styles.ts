import { PAPER_INKS } from "#lib/pictures/paper-inks.ts";
import { DARK_INKS } from "./dark-inks.ts";

const declared = (inks: Readonly<Record<string, string>>): string =>
  Object.entries(inks)
    .map(([name, value]) => `--${name}:${value}`)
    .join(";");

/** Fonts that the page asks for, by the name under which its own server gives them out. */
export const PAGE_FONTS = {
  "sans-400": "atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff2",
  "sans-600": "atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-600-normal.woff2",
  "mono-400": "atkinson-hyperlegible-mono/files/atkinson-hyperlegible-mono-latin-400-normal.woff2",
  "mono-600": "atkinson-hyperlegible-mono/files/atkinson-hyperlegible-mono-latin-600-normal.woff2",
  "serif-400": "source-serif-4/files/source-serif-4-latin-400-normal.woff2",
  "serif-600": "source-serif-4/files/source-serif-4-latin-600-normal.woff2",
} as const;
export type PageFont = keyof typeof PAGE_FONTS;

/** Asked for before the style sheet is read. A font that still comes late is left for the next visit: no line may jump. */
export const EARLY_FONTS: readonly PageFont[] = ["sans-400", "sans-600", "serif-400", "serif-600"];

export const fontHref = (name: PageFont): string => `/h/fonts/${name}.woff2`;

const faces = (Object.keys(PAGE_FONTS) as PageFont[])
  .map((name) => {
    const [family, weight] = name.split("-");
    return `@font-face{font-family:paper-${family};font-weight:${weight};font-display:optional;src:url(${fontHref(name)}) format("woff2")}`;
  })
  .join("");

/**
 * The whole style sheet of a page by link. Phone first; a wide window gets wider cards and pictures; paper gets black on
 * white. On a screen it follows the reader's light or dark; printed it is light as the paper that it stands for.
 */
export const PAGE_STYLES = `${faces}
:root{color-scheme:light dark;${declared(PAPER_INKS)};--field-line:#8b8371;--on-accent:#fff}
@media screen and (prefers-color-scheme:dark){:root{${declared(DARK_INKS)}}.firm img,.photos img{background:#fff;border-radius:.25rem}}
*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:400 1.0625rem/1.5 paper-sans,system-ui,sans-serif;-webkit-text-size-adjust:100%}
main,header,footer{max-width:46rem;margin:0 auto;padding:0 1rem}
.skip{position:absolute;left:-999px}.skip:focus{left:1rem;top:.5rem;background:var(--card);padding:.75rem}
.bar{display:flex;flex-wrap:wrap;gap:.25rem 1.25rem;padding-top:1rem;align-items:center}
.bar a{min-height:2.75rem;display:inline-flex;align-items:center}
a{color:var(--accent)}
.firm{display:flex;flex-wrap:wrap;align-items:center;justify-content:space-between;gap:.5rem 1.5rem;padding:1rem 0 .75rem;border-bottom:3px solid var(--accent)}
.firm img{display:block;height:3.25rem;max-width:16rem;object-fit:contain;object-position:left}.firm p{margin:0;color:var(--soft);font-size:.9375rem}.firm .strong{color:var(--ink);font:600 1.25rem/1.3 paper-serif,Georgia,serif}
.facts{color:var(--soft);font-size:.9375rem;margin:.5rem 0 .25rem;padding:0;list-style:none}.facts li{display:inline;margin:0}.facts li+li::before{content:" · "}
h1,h2{font-family:paper-serif,Georgia,serif;font-weight:600;line-height:1.18;text-wrap:balance}
h1{font-size:clamp(1.9rem,1.3rem + 2.6vw,2.7rem);margin:1.1rem 0 .75rem}
h2{font-size:1.5rem;margin:1.5rem 0 .4rem;scroll-margin-top:1rem}
h3{font-size:1.0625rem;font-weight:600;margin:1.25rem 0 .25rem}
.lead{font-family:paper-serif,Georgia,serif;font-size:1.3rem;line-height:1.45;margin:0 0 .9rem}
p{margin:0 0 .6rem}ul{padding-left:1.25rem;margin:.5rem 0}li{margin-bottom:.3rem}
.strong,b{font-weight:600}small{color:var(--soft);font-size:.9375rem}
svg{width:100%;height:auto;display:block}svg text{font-family:paper-sans,system-ui,sans-serif}svg .mono{font-family:paper-mono,monospace}
figure{margin:.75rem 0}.wide{display:none}.note,.summary{color:var(--soft);font-size:.9375rem}
.photos{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(15rem,100%),1fr));gap:1rem;margin:1rem 0 1.5rem;padding:0;list-style:none}
.photos img{display:block;max-width:100%;max-height:22rem;border:1px solid var(--hairline)}.photos span{color:var(--soft);font-size:.9375rem}.photos li{break-inside:avoid}
.sheet{overflow-x:auto;margin:1rem 0}
table{border-collapse:collapse;width:100%;font-size:.9375rem;line-height:1.35;font-variant-numeric:tabular-nums}
caption{text-align:left;font-weight:600;padding-bottom:.4rem;font-size:1.0625rem}
th,td{text-align:left;padding:.5rem .75rem .5rem 0;vertical-align:top;border-bottom:1px solid var(--hairline)}
th{border-bottom:1.5px solid var(--ink);vertical-align:bottom;font-weight:600}
td:last-child,th:last-child{padding-right:0}.number{text-align:right;white-space:nowrap}th.number{white-space:normal}
.total td{font-weight:600;border-top:1.5px solid var(--ink);border-bottom:0}
details summary{min-height:2.75rem;display:flex;align-items:center;color:var(--accent);cursor:pointer;text-decoration:underline}
.more>summary{font-weight:600}.more[open]>summary{margin-bottom:.5rem}.more{margin:0 0 .25rem}
.figures{display:grid;grid-template-columns:1fr 1fr;gap:.75rem 1rem;margin:.75rem 0}.figures>:first-child:nth-last-child(odd){grid-column:1/-1}.figures dt{color:var(--soft);font-size:.9375rem}
.figures dd{margin:0}.figures b{font:600 1.35rem/1.3 paper-mono,monospace;display:block}
.cards{display:grid;gap:.75rem;margin:.75rem 0}.top{display:flex;flex-wrap:wrap;justify-content:space-between;align-items:baseline;gap:0 1rem}
.card{background:var(--card);border:1px solid var(--field-line);border-radius:.75rem;padding:.8rem 1rem .6rem}.card .summary{margin-bottom:.4rem}
.card.advised{border:2.5px solid var(--accent)}.card h3{font:600 1.2rem/1.2 paper-serif,Georgia,serif;margin:0}
.mark{color:var(--accent);font-weight:600;margin:0 0 .25rem}.price{font:600 1.5rem/1.3 paper-mono,monospace;margin:.1rem 0}
.card dl{margin:0}.card dl div{display:flex;justify-content:space-between;gap:1rem;padding:.3rem 0;border-top:1px solid var(--hairline)}
.card dt{color:var(--soft);flex:none;max-width:60%}.card dd{margin:0;text-align:right}
.notice{border-left:4px solid var(--ink);padding:.1rem 0 .1rem .9rem;margin:.75rem 0}.notice h2{font-size:1.25rem;margin:.1rem 0 .3rem}.notice h3{margin:0}.notice p{margin:0}
.notice.note{border-color:var(--accent);color:inherit;font-size:inherit}.technical{border-top:1px solid var(--hairline)}.technical summary h2{font-size:1.25rem;margin:.75rem 0}.notice.invented{border:1.5px dashed var(--soft);padding:.75rem .9rem}
.notice.done{border-color:var(--kept);background:var(--kept-tint);padding:.75rem .9rem}.notice.wrong{border-color:var(--lost);background:var(--lost-tint);padding:.75rem .9rem}
form{background:var(--card);border:1px solid var(--field-line);border-radius:.75rem;padding:1rem;margin:1rem 0}
fieldset{border:0;padding:0;margin:0 0 1rem}legend{font-weight:600;padding:0;margin-bottom:.25rem}
.choice{display:flex;gap:.75rem;align-items:center;min-height:2.75rem}.choice input{width:1.4rem;height:1.4rem;flex:none;accent-color:var(--accent)}
label.field{display:block;font-weight:600;margin:0 0 1rem}.field input,.field textarea{display:block;width:100%;font:inherit;font-weight:400;min-height:3.25rem;padding:.6rem .75rem;margin-top:.3rem;border:1.5px solid var(--field-line);border-radius:.5rem;background:var(--card);color:var(--ink)}
button{font:600 1.0625rem/1 paper-sans,system-ui,sans-serif;min-height:3rem;padding:.75rem 1.5rem;border:0;border-radius:.5rem;background:var(--accent);color:var(--on-accent);cursor:pointer}
:focus-visible{outline:3px solid var(--accent);outline-offset:2px}
.thread{list-style:none;padding:0}.thread li{background:var(--card);border:1px solid var(--hairline);border-radius:.75rem;padding:.75rem 1rem}
.digest{font:400 .8125rem/1.4 paper-mono,monospace;overflow-wrap:anywhere}footer{color:var(--soft);font-size:.9375rem;padding-bottom:3rem;margin-top:2.5rem}
@media(min-width:44rem){h2{margin:2.25rem 0 .6rem}.compact{display:none}.wide{display:block}.cards{grid-template-columns:1fr 1fr}.figures{grid-template-columns:repeat(3,1fr)}.figures>:first-child:nth-last-child(odd){grid-column:auto}main,header,footer{padding:0 1.5rem}}
@media print{:root{color-scheme:light}body{background:#fff;font-size:11pt}form,.bar,.skip,figure summary,.more>summary,[aria-labelledby=accept],.ask:not(:has(.thread li)){display:none}.technical summary{color:inherit;text-decoration:none}h2,h3,caption{break-after:avoid}tr,.card,.notice,figure,svg{break-inside:avoid}.compact{display:none}.wide{display:block}details>*{display:block}details::details-content{content-visibility:visible;display:block;height:auto}.cards{grid-template-columns:1fr 1fr}}
`;
