import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { unitSystem } from "#app/units/unit-system.ts";
import { TARGET_RULES } from "#lib/retest/targets.ts";
import { DEEMED_RULES } from "#lib/savings/deemed-rules.ts";
import { glimpse } from "../../glimpse.ts";
import { ownInstruments } from "../../own-instruments.ts";
import { showAs } from "../../session.ts";
import type { Draft } from "../../trip/draft.ts";
import { jobFieldSpecs } from "../../trip/field-spec.ts";
import { Step } from "../../trip/step.tsx";
import { Trip } from "../../trip/trip.tsx";
import { isTripStep, STEP_WORDS } from "../../trip/trip-steps.ts";

interface Props {
  params: Promise<{ id: string; step: string }>;
  searchParams: Promise<{ needed?: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { step } = await params;
  return { title: isTripStep(step) ? STEP_WORDS[step].question : "Job" };
}

/** One step of the trip, with the answer as far as it goes. */
export default async function TripStepPage({ params, searchParams }: Props) {
  const { id, step } = await params;
  const { needed } = await searchParams;
  if (!isTripStep(step)) notFound();
  const { job, revision, own } = await showAs("job.view", async (scope) => ({
    ...(await scope.jobs.findCurrent(id)),
    own: await ownInstruments(scope),
  }));
  if (!revision) notFound();
  const units = await unitSystem();
  const { first, later } = await glimpse(revision.document, units);
  const rules = {
    targets: TARGET_RULES.map(({ id: value, title }) => ({ value, label: title })),
    deemedRules: DEEMED_RULES.map(({ id: value, title, edition }) => ({ value, label: `${title}, ${edition}` })),
  };
  return (
    <>
      {job.isDemo ? <DemoBanner>{`${job.title} is made up. Change what you like.`}</DemoBanner> : null}
      <Trip
        key={`${step} ${job.currentRevision}`}
        jobId={id}
        revision={job.currentRevision}
        step={step}
        units={units}
        firstDraft={revision.document as Draft}
        specs={jobFieldSpecs()}
        first={first}
        later={later}
        wantsResult={needed === "result"}
      >
        <Step step={step} rules={rules} own={own} />
      </Trip>
    </>
  );
}
