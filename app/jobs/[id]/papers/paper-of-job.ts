import "server-only";
import { contractorOf } from "#app/organization/contractor-of.ts";
import { certificateView } from "#lib/documents/certificate-view.ts";
import type { Contractor } from "#lib/documents/contractor.ts";
import { crewSheetView } from "#lib/documents/crew-sheet-view.ts";
import type { DocumentView } from "#lib/documents/document-view.ts";
import type { ProposalInput } from "#lib/documents/proposal/proposal-context.ts";
import { retestSheetView } from "#lib/documents/retest-sheet-view.ts";
import { photosOfView, withPhotos } from "#lib/documents/with-photos.ts";
import { paperPhoto } from "#lib/exchange/photos/paper-photo.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { computeResult } from "../../compute-result.ts";
import { jobAsOrdered, orderedWork } from "../../ordered-work.ts";
import { showAs } from "../../session.ts";
import { showJob } from "../../show-job.ts";

const VIEWS: Readonly<Record<string, (input: ProposalInput) => DocumentView>> = {
  "crew-sheet": crewSheetView,
  "retest-sheet": retestSheetView,
  certificate: certificateView,
};

interface Paper {
  job: Job;
  /** What it says, which its fingerprint is of. */
  view: DocumentView;
  /** The same with its photos put in, to be laid out. */
  shown: DocumentView;
  contractor: Contractor;
}

/** A paper for the crew or after the work, as the job is now; null where the job has no such paper (yet). */
export async function paperOfJob(id: string, kind: string, language: ProposalInput["language"]): Promise<Paper | null> {
  const viewOf = Object.hasOwn(VIEWS, kind) ? VIEWS[kind] : undefined;
  const shown = await showJob(id);
  const job = jobAsOrdered(shown.job, await showAs("job.view", (scope) => orderedWork(scope, id)));
  const result = await computeResult(job);
  const hasPaper = kind === "certificate" ? result.verified && result.promised : result.scope.chosen !== null;
  if (!viewOf || !hasPaper) return null;
  const contractor = contractorOf(await showAs("job.view", ({ organizations }) => organizations.own()));
  const view = viewOf({ job, result, contractor, language, isoDate: new Date().toLocaleDateString("en-CA") });
  return { job, view, shown: await withPhotosOfJob(id, view), contractor };
}

/** Each photo that is on this server; of the others the words stand alone. */
async function withPhotosOfJob(id: string, view: DocumentView): Promise<DocumentView> {
  const kept = await showAs("job.view", ({ photos }) => photos.findMany(id, photosOfView(view)));
  const hrefs = await Promise.all(
    kept.map(async ({ sha256, content }) => [sha256, await paperPhoto(content)] as const),
  );
  return withPhotos(view, new Map(hrefs));
}

export const noSuchPaper = (): Response => new Response("This job has no such paper yet.", { status: 404 });
