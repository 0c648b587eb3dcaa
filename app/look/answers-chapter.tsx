import { AnswerBar } from "#app/design/answer-bar.tsx";
import { Button, LinkButton } from "#app/design/button.tsx";
import { DataTable } from "#app/design/data-table.tsx";
import { EmptyState } from "#app/design/empty-state.tsx";
import { ErrorSummary } from "#app/design/error-summary.tsx";
import { Money } from "#app/design/money.tsx";
import { Notice } from "#app/design/notice.tsx";
import { StatGrid } from "#app/design/stat-block.tsx";
import { Term } from "#app/design/term.tsx";
import { Disclosure, WorkedOut } from "#app/design/worked-out.tsx";
import { DialogSample } from "./dialog-sample.tsx";
import { Chapter, Specimen } from "./specimen.tsx";

const STATS = [
  { id: "cfm25", label: "Leakage at 25 Pa", value: "274", unit: "cfm", doubt: "give or take 14" },
  { id: "outside", label: "To outside", value: "231", unit: "cfm", doubt: "not measured yet" },
  { id: "rooms", label: "Reaches the rooms in January", value: "66", unit: "%", doubt: "61 to 71" },
  { id: "saved", label: "Saved by sealing", value: "$310", unit: "a year", doubt: "could be $190 to $430" },
];

/** What the program says back. */
export function AnswersChapter() {
  return (
    <Chapter id="answers" title="What it says back">
      <Specimen name="Notice, four kinds; the sign always has its word">
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
        <Notice kind="good" title="274 cfm at 25 Pa.">
          <p>Sits on the line of the first two steps, within 2 cfm.</p>
        </Notice>
        <Notice kind="info" title="Attic insulation was not asked yet.">
          <p>R-19 is taken until you know better; it adds about $20 to the range.</p>
        </Notice>
        <Notice kind="problem" title="The two readings cannot both be right.">
          <p>More leaks to outside than in all. Check which test was total.</p>
        </Notice>
      </Specimen>
      <Specimen name="Error summary">
        <ErrorSummary
          takesFocus={false}
          errors={[{ fieldId: "fan-pressure", text: "Fan pressure must be between 5 and 600 pascals" }]}
        />
      </Specimen>
      <Specimen name="Numbers with their doubt">
        <StatGrid stats={STATS} />
      </Specimen>
      <Specimen name="The answer bar of a phone">
        <AnswerBar
          stats={[
            { id: "at25", label: "at 25 Pa", value: "274 cfm" },
            { id: "limit", label: "limit 4 per 100 ft²", value: "66 cfm" },
            { id: "seal", label: "to seal", value: "76%" },
          ]}
        >
          <StatGrid stats={STATS} />
        </AnswerBar>
      </Specimen>
      <Specimen name="Table">
        <DataTable
          caption="Leaks to seal"
          columns={[
            { label: "Leak" },
            { label: "Place" },
            { label: "Leakage at 25 Pa (cfm)", isNumeric: true },
            { label: "Price", isNumeric: true },
          ]}
          rows={[
            { id: "1", cells: ["1 · supply plenum joint", "attic", "121", <Money key="m" usdCents={42000} />] },
            { id: "2", cells: ["2 · living room boot", "attic", "38", <Money key="m" usdCents={18550} />] },
            { id: "3", cells: ["3 · bedroom take-off", "attic", "22", <Money key="m" usdCents={9900} />] },
          ]}
        />
      </Specimen>
      <Specimen name="How is this worked out?">
        <WorkedOut
          steps={[
            {
              id: "cfm25",
              label: "Leakage at 25 Pa",
              value: "182.7",
              unit: "cfm",
              equation: "Q₂₅ = Q · (25 / P)ⁿ",
              inputs: [
                { label: "Flow", value: "150", unit: "cfm" },
                { label: "Duct pressure", value: "18", unit: "Pa" },
                { label: "Flow exponent", value: "0.6", unit: "none" },
              ],
              source: "power law of leakage, form of ASTM E779",
            },
          ]}
        />
      </Specimen>
      <Specimen name="Disclosure">
        <Disclosure title="What if the target is missed?">
          <p>We keep working at no charge until the second test is under the limit.</p>
        </Disclosure>
      </Specimen>
      <Specimen name="Term with its meaning">
        <p>
          The boxes were sealed with{" "}
          <Term meaning="A thick paste that hardens and stays a little soft. It seals duct joints better than tape.">
            mastic
          </Term>{" "}
          and read again with a{" "}
          <Term meaning="A shallow pan held over one register while the house is under pressure; the reading tells how leaky that branch is.">
            pressure pan
          </Term>
          .
        </p>
      </Specimen>
      <Specimen name="Dialog, for what cannot be undone">
        <DialogSample />
      </Specimen>
      <Specimen name="Empty state">
        <EmptyState title="No leaks yet" action={<LinkButton href="#pictures">Tag the first leak</LinkButton>}>
          Walk the ducts with the fan running and tag what you feel. Two or three large ones usually make up most of it.
        </EmptyState>
      </Specimen>
      <Specimen name="Money">
        <p>
          <Money usdCents={118000} isLarge /> saves about <Money estimatedUsd={313} /> a year
        </p>
      </Specimen>
    </Chapter>
  );
}
