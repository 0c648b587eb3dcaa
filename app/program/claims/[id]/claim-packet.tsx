import { LinkButton } from "#app/design/button.tsx";
import { DataTable } from "#app/design/data-table.tsx";
import type { Claim } from "#lib/claims/claim-schema.ts";
import type { DuctTest } from "#lib/job/duct-test.ts";
import { formatNumber } from "#lib/units/format.ts";
import styles from "../../program.module.css";

const STAGES: Readonly<Record<DuctTest["stage"], string>> = {
  existing: "Before the work",
  "rough-in": "At rough-in",
  "during-work": "During the work",
  final: "After the work",
  retest: "After the work",
};
const KINDS: Readonly<Record<DuctTest["kind"], string>> = {
  "total-leakage": "Total leakage",
  "leakage-to-outside": "Leakage to outside",
  "blower-door-subtraction": "Blower-door subtraction",
  "delta-q": "Delta-Q",
};

function readingOf(test: DuctTest): string {
  if (test.kind === "blower-door-subtraction")
    return `${formatNumber(test.wholeHouseCfm50)} and ${formatNumber(test.envelopeCfm50)} cfm at 50 Pa`;
  if (test.kind === "delta-q") return `${test.points.length} pressures`;
  return test.points
    .map(({ ductPressurePa, fanPressurePa, flowCfm, restrictorId }) => {
      const fan =
        fanPressurePa === undefined
          ? `${formatNumber(flowCfm ?? 0, { significantDigits: 6 })} cfm`
          : `fan ${fanPressurePa} Pa, ${restrictorId ?? "open"}`;
      return `${ductPressurePa} Pa: ${fan}`;
    })
    .join("; ");
}

/** The inputs as they were taken. Nobody edits them here; who doubts them asks. */
export function ClaimPacket({ claim, claimId, packetHash }: { claim: Claim; claimId: string; packetHash: string }) {
  const { job } = claim;
  const instruments = [...(job.instruments?.fans ?? []), ...(job.instruments?.gauges ?? [])];
  return (
    <>
      <p>
        {job.house.label}, {formatNumber(job.house.conditionedFloorAreaFt2)} ft², {claim.reference.placeTitle}. Claimed
        by {claim.claimedBy} on {claim.claimedOn}.
      </p>
      <DataTable
        caption="Tests, with the readings as taken"
        isCardsWhenNarrow
        columns={[{ label: "Test" }, { label: "When" }, { label: "By" }, { label: "Reading" }]}
        rows={job.tests.map((test) => ({
          id: test.id,
          cells: [
            `${KINDS[test.kind]}, ${STAGES[test.stage].toLowerCase()}`,
            [test.date, test.time].filter(Boolean).join(" ") || "no date",
            test.by ?? "not named",
            readingOf(test),
          ],
        }))}
      />
      {instruments.length > 0 ? (
        <DataTable
          caption="Instruments"
          isCardsWhenNarrow
          columns={[{ label: "Instrument" }, { label: "Serial number" }, { label: "Calibrated" }, { label: "Due" }]}
          rows={instruments.map(({ id, name, serialNumber, calibrationDate, calibrationDueDate }) => ({
            id,
            cells: [
              name,
              serialNumber ?? "not given",
              calibrationDate ?? "not given",
              calibrationDueDate ?? "not given",
            ],
          }))}
        />
      ) : (
        <p>No instrument is named.</p>
      )}
      <p>
        {claim.assumptions.length} values were not measured but assumed; each stands in the packet with its path. Engine{" "}
        {claim.engineVersion}, {claim.draws.toLocaleString("en-US")} draws, seed {claim.seed}.
      </p>
      <p>
        Fingerprint of the packet <span className={styles.print}>{packetHash}</span>
        {claim.signature ? ", signed by the contractor" : ", not signed"}.
      </p>
      <p className={styles.actions}>
        <LinkButton href={`/program/claims/${claimId}/packet`} variant="secondary" prefetch={false}>
          Download the packet
        </LinkButton>
      </p>
    </>
  );
}
