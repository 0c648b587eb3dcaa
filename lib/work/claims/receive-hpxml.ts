import type { MemberActor } from "#lib/access/actor.ts";
import { requireAllowed } from "#lib/access/can.ts";
import { type ClaimOrigin, LONGEST_UNREAD_LINE, MOST_UNREAD_LINES } from "#lib/claims/claim-schema.ts";
import { createClaim } from "#lib/claims/create-claim.ts";
import { InputProblem, refuse } from "#lib/errors/input-problem.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { type HpxmlReading, readHpxml } from "#lib/exchange/hpxml/read-hpxml.ts";
import { canonicalJson } from "#lib/hash/content-hash.ts";
import { textHash } from "#lib/hash/sha256.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import type { Store } from "#lib/store/open-store.ts";
import { helpWithBatch } from "./help-with-batch.ts";
import { importClaims, type SourceLine } from "./import-claims.ts";
import { programRuleOn } from "./program-rule-on.ts";
import { completionDate } from "./submit-claim.ts";

const LONGEST_NAME = 200;
const HASH_DIGITS = 12;

/** A path of the file by its building and its last element. */
const withShortPath = (line: string): string =>
  line.replace(/^(HPXML\/Building(?:\[\d+\])?)\/[^:]*\/(?=[^/:]+:)/, "$1/…/");

/** Where the standard has no place for a thing, the claim carries which file it came in and what of it was not read. */
function originOf(text: string, fileName: string, { remarks, claimedSavings }: HpxmlReading): ClaimOrigin {
  const { electricityKWh, naturalGasTherms } = claimedSavings;
  return {
    standard: "HPXML",
    fileName: fileName.slice(0, LONGEST_NAME),
    fileHash: textHash(text),
    ...(electricityKWh !== undefined && { savedElectricityKWh: electricityKWh }),
    ...(naturalGasTherms !== undefined && { savedNaturalGasTherms: naturalGasTherms }),
    unreadCount: remarks.length,
    unread: remarks.slice(0, MOST_UNREAD_LINES).map((line) => withShortPath(line).slice(0, LONGEST_UNREAD_LINE)),
  };
}

/**
 * Takes in a house of an HPXML file as a claim of a contractor: its measured leakage before and after stands as the file
 * has it, and the numbers are this engine's from the file's house, without ranges, for the readings behind the leakage
 * are not in the standard. It goes by the same door as every claim of a file. Returns its id, known once it is checked,
 * and each thing of the file that was not read or had to be taken otherwise; the packet keeps the first of them.
 * @throws InputProblem when the file is no HPXML, has no leakage measured after the work, or is refused as a claim.
 */
export async function receiveHpxml(
  store: Store,
  actor: MemberActor,
  {
    text,
    sourceName,
    contractorId,
    programId,
  }: { text: string; sourceName: string; contractorId?: string; programId?: string },
): Promise<{ batchId: string; claimId: string; unread: string[] }> {
  requireAllowed(actor, "claim.import");
  const reading = readHpxml(text);
  const { job } = reading;
  const day = completionDate(job, job.date ?? "");
  if (day === "")
    refuse({
      field: "#/HPXML/Building/ProjectStatus/Date",
      detail: "The file does not say when the work was done",
      fix: "Export the file with the date of each event.",
    });
  const { contractor, rule } = await store.withOrganization(actor, async (scope) => {
    const partner = (await scope.organizations.partners()).find(({ id }) => id === contractorId);
    if (!partner)
      return refuse({
        field: "contractor",
        detail: "HPXML does not say whose claim this is",
        fix: "Choose the contractor that the file comes from.",
      });
    const own = (await scope.programs.list()).filter((each) => each.organizationId === actor.organizationId);
    const program = programId === undefined ? own[0] : own.find(({ id }) => id === programId);
    if (!program) throw new InputProblem("not-found", [], "Your organization has no such program.");
    return { contractor: partner, rule: await programRuleOn(scope, program.id, new Date(day)) };
  });
  const reference = await loadReferenceData(job);
  const claim = createClaim({
    job,
    reference,
    result: await estimate(job, reference),
    claimedBy: contractor.name,
    claimedOn: day,
    measureLifeYears: rule.measureLifeYears,
    netToGrossRatio: rule.netToGrossRatio,
    origin: originOf(text, sourceName, reading),
  });
  const number = `${job.id}-${claim.hash.slice(0, HASH_DIGITS)}`;
  const packet = JSON.parse(canonicalJson(claim)) as unknown;
  const lines = async function* (): AsyncGenerator<SourceLine> {
    yield { line: 1, bytes: text.length, claim: { packet, reference: number } };
  };
  const batchId = await importClaims(store, actor, { programId, sourceName, contractorId, lines: lines() });
  await helpWithBatch(store, actor, batchId);
  return await store.withOrganization(actor, async ({ claims, claimBatches }) => {
    const [refused] = await claimBatches.refusedLines(batchId);
    if (refused) refuse({ field: "file", detail: refused.detail, fix: "Correct it, then send the file again." });
    const { items } = await claims.list({ contractorId, reference: number, limit: 1 });
    return { batchId, claimId: items[0]!.id, unread: reading.remarks };
  });
}
