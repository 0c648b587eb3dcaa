import { DataTable } from "#app/design/data-table.tsx";
import { Notice } from "#app/design/notice.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import type { Claim, ClaimOrigin } from "#lib/claims/claim-schema.ts";
import { formatNumber } from "#lib/units/format.ts";
import styles from "../../program.module.css";

const CAN_BE_CHECKED = [
  "leakage before and after against the program’s rule",
  "leakage to outside against total leakage, dates, and the same premise or readings in other claims",
  "what the file claims to save against what follows from its own house, ducts and leakage",
];
const CANNOT_BE_CHECKED = [
  "the gauge: no fan pressure, restrictor or direction, so nobody can work the leakage out again",
  "instruments and their calibration, who tested, at what time",
  "photos of the repairs, and which leak was sealed how",
  "how sure the numbers are: without readings there are no ranges",
];

const shown = (value: number | undefined): string => (value === undefined ? "not given" : formatNumber(value));

/** Of a claim that came as HPXML: what that can show and what it cannot, and what of the file was not read. */
export function ClaimOriginPart({ origin, numbers }: { origin: ClaimOrigin; numbers: Claim["numbers"] }) {
  const rest = origin.unreadCount - origin.unread.length;
  return (
    <section aria-labelledby="origin">
      <h2 id="origin">From an HPXML file</h2>
      <Notice kind="info" title="The standard carries what a test found, not the readings behind it.">
        The numbers of this packet are this engine’s, from the house, ducts and leakage of {origin.fileName}.
      </Notice>
      <h3>Can be checked</h3>
      <ul className={styles.lines}>
        {CAN_BE_CHECKED.map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
      <h3>Cannot be checked</h3>
      <ul className={styles.lines}>
        {CANNOT_BE_CHECKED.map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
      <DataTable
        caption="Saved a year"
        columns={[
          { label: "Fuel" },
          { label: "As the file claims", isNumeric: true },
          { label: "This engine", isNumeric: true },
        ]}
        rows={[
          {
            id: "electricity",
            cells: [
              "Electricity, kWh",
              shown(origin.savedElectricityKWh),
              shown(numbers["savings/electricityKWh"]?.[0]),
            ],
          },
          {
            id: "gas",
            cells: [
              "Gas, therms",
              shown(origin.savedNaturalGasTherms),
              shown(numbers["savings/naturalGasTherms"]?.[0] ?? 0),
            ],
          },
        ]}
      />
      <Disclosure title={`What of the file was not read, or taken otherwise (${origin.unreadCount})`}>
        <ul className={styles.lines}>
          {origin.unread.map((line) => (
            <li key={line}>{line}</li>
          ))}
          {rest > 0 ? <li>and {rest} more</li> : null}
        </ul>
      </Disclosure>
    </section>
  );
}
