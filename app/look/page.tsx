import type { Metadata } from "next";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { AnswersChapter } from "./answers-chapter.tsx";
import styles from "./look.module.css";
import { Palette } from "./palette.tsx";
import { PicturesChapter } from "./pictures-chapter.tsx";
import { QuestionsChapter } from "./questions-chapter.tsx";
import { Chapter } from "./specimen.tsx";
import { StatesChapter } from "./states-chapter.tsx";

export const metadata: Metadata = { title: "The look" };

const SIZES = [
  { token: "text-3xl", text: "Your ducts are worth sealing.", isSerif: true },
  { token: "text-2xl", text: "What did the gauge read at each step?", isSerif: true },
  { token: "text-xl", text: "Before and after", isSerif: true },
  { token: "text-l", text: "Of every $100 for heating, about $25 warms the attic.", isSerif: true },
  { token: "text-m", text: "Three steps make a line; five make a test that stands on its own.", isSerif: false },
  { token: "text-s", text: "Go down in pressure from about 50 Pa.", isSerif: false },
  { token: "text-xs", text: "1,640 ft², built 1978", isSerif: false },
] as const;

export default function LookPage() {
  return (
    <>
      <DemoBanner />
      <div className={styles.page}>
        <h1>The look: a builder’s section on warm paper</h1>
        <p className={styles.lead}>
          The house is the interface, every number has its doubt beside it, and meaning has a color and a pattern. This
          page shows each part in each of its states; switch the theme above to see it in the other light.
        </p>
        <Chapter
          id="colors"
          title="Color that means something"
          intro="Kept, lost, partly regained, outside air: each has its own pattern, so that a grey print and an eye that sees no red and green read the same."
        >
          <Palette />
        </Chapter>
        <Chapter
          id="type"
          title="Type"
          intro="Atkinson Hyperlegible Next for the screen, its Mono for readings and money, Source Serif 4 for headings."
        >
          {SIZES.map(({ token, text, isSerif }) => (
            <p
              key={token}
              className={isSerif ? `${styles.size} ${styles.serif}` : styles.size}
              style={{ fontSize: `var(--${token})` }}
            >
              {text}
            </p>
          ))}
          <p className={styles.figures}>48.6 Pa · 131 Pa · 412 cfm · $1,180</p>
        </Chapter>
        <QuestionsChapter />
        <StatesChapter />
        <AnswersChapter />
        <PicturesChapter />
      </div>
    </>
  );
}
