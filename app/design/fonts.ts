import localFont from "next/font/local";

/**
 * Type served by ourselves, Latin letters only. next/font writes a fallback face with the same metrics, so text does
 * not move when the real one arrives.
 */
export const sans = localFont({
  variable: "--font-next",
  display: "swap",
  src: [
    {
      path: "../../node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff2",
      weight: "400",
    },
    {
      path: "../../node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-600-normal.woff2",
      weight: "600",
    },
  ],
});

export const mono = localFont({
  variable: "--font-next-mono",
  display: "swap",
  preload: false,
  src: [
    {
      path: "../../node_modules/@fontsource/atkinson-hyperlegible-mono/files/atkinson-hyperlegible-mono-latin-400-normal.woff2",
      weight: "400",
    },
    {
      path: "../../node_modules/@fontsource/atkinson-hyperlegible-mono/files/atkinson-hyperlegible-mono-latin-600-normal.woff2",
      weight: "600",
    },
  ],
});

export const serif = localFont({
  variable: "--font-serif-four",
  display: "swap",
  adjustFontFallback: "Times New Roman",
  src: [
    {
      path: "../../node_modules/@fontsource/source-serif-4/files/source-serif-4-latin-400-normal.woff2",
      weight: "400",
    },
    {
      path: "../../node_modules/@fontsource/source-serif-4/files/source-serif-4-latin-600-normal.woff2",
      weight: "600",
    },
  ],
});
