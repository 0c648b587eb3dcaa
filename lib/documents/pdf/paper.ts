/** Sheets of paper as data, in points. */
export const PAPERS = {
  letter: { name: "US Letter", widthPoints: 612, heightPoints: 792 },
  a4: { name: "A4", widthPoints: 595.28, heightPoints: 841.89 },
} as const;
export type Paper = keyof typeof PAPERS;
