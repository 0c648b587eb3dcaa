import type { Metadata } from "next";
import { AnswerBar } from "#app/design/answer-bar.tsx";
import { Button } from "#app/design/button.tsx";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { Notice } from "#app/design/notice.tsx";
import { Picture } from "#app/design/picture.tsx";
import { StatGrid } from "#app/design/stat-block.tsx";
import { TripLayout } from "#app/design/trip-layout.tsx";
import { TripRail, type TripStep } from "#app/design/trip-rail.tsx";
import { houseSectionScene } from "#lib/pictures/house/house-section.ts";
import { hundredDollarsScene } from "#lib/pictures/hundred-dollars.ts";
import { HUNDRED_DOLLARS } from "../sample-figures.ts";
import { ATTIC_HOUSE } from "../sample-houses.ts";
import { ReadingsSample } from "./readings-sample.tsx";

export const metadata: Metadata = { title: "The look: a question with its answer" };

const STEPS: readonly TripStep[] = [
  { id: "house", label: "House", href: "#house", state: "done", detail: "1,640 ft², 1978" },
  { id: "equipment", label: "Equipment", href: "#equipment", state: "done", detail: "gas 80%, 3 ton" },
  { id: "ducts", label: "Ducts", href: "#ducts", state: "done", detail: "attic, R-4" },
  { id: "readings", label: "Readings", href: "#readings", state: "current", detail: "2 of 3 points" },
  { id: "leaks", label: "Leaks", href: "#leaks", state: "waiting" },
  { id: "energy", label: "Energy", href: "#energy", state: "waiting" },
  { id: "plan", label: "Plan", href: "#plan", state: "waiting" },
];

const STATS = [
  { id: "cfm25", label: "Leakage at 25 Pa", value: "274", unit: "cfm", doubt: "give or take 14" },
  { id: "outside", label: "To outside", value: "231", unit: "cfm", doubt: "not measured yet" },
  { id: "rooms", label: "Reaches the rooms in January", value: "63", unit: "%", doubt: "58 to 68" },
  { id: "saved", label: "Saved by sealing", value: "$310", unit: "a year", doubt: "could be $190 to $430" },
];

/** How the parts come together: the trip at the left, one question, the answer at the right. Nothing here is saved. */
export default function TripSamplePage() {
  const answer = (
    <>
      <Picture build={(options) => houseSectionScene(ATTIC_HOUSE, options)} headingLevel={2} isHeadingHidden />
      <StatGrid stats={STATS} />
      <Picture build={(options) => hundredDollarsScene(HUNDRED_DOLLARS, options)} headingLevel={2} isHeadingHidden />
    </>
  );
  return (
    <>
      <DemoBanner />
      <TripLayout
        rail={<TripRail steps={STEPS} />}
        railTitle="Readings, step 4 of 7"
        answer={answer}
        answerBar={
          <AnswerBar
            stats={[
              { id: "at25", label: "at 25 Pa", value: "274 cfm" },
              { id: "limit", label: "limit", value: "66 cfm" },
              { id: "seal", label: "to seal", value: "76%" },
            ]}
          >
            {answer}
          </AnswerBar>
        }
      >
        <h1>What did the gauge read at each step?</h1>
        <p>Three steps make a line; five make a test that stands on its own. Go down in pressure from about 50 Pa.</p>
        <ReadingsSample />
        <Notice
          kind="doubt"
          title="Step 3 is under what the medium restrictor can read."
          actions={
            <>
              <Button>Read step 3 again</Button>
              <Button variant="quiet">Keep it and mark it doubtful</Button>
            </>
          }
        >
          <p>Its calibration starts at 25 Pa of fan pressure. Fit the small one and read again: expect about 92 Pa.</p>
        </Notice>
      </TripLayout>
    </>
  );
}
