import type { Notice } from "./document-view.ts";
import type { JobContext } from "./proposal/proposal-context.ts";

/** A reading taken after the calibration of its instrument ran out is said on top of every paper that stands on it. */
export function instrumentNotices({ speaker, job, result }: Pick<JobContext, "speaker" | "job" | "result">): Notice[] {
  const doubted = new Set(result.warnings.flatMap(({ code, path }) => (code === "calibration-expired" ? [path] : [])));
  return (["fans", "gauges"] as const).flatMap((list) =>
    (job.instruments?.[list] ?? []).flatMap(({ name, calibrationDueDate }, index): Notice[] =>
      calibrationDueDate && doubted.has(`#/instruments/${list}/${index}`)
        ? [
            {
              tone: "caution",
              title: speaker.say("calibration.title"),
              text: speaker.say("calibration.text", { name, date: speaker.date(calibrationDueDate) }),
            },
          ]
        : [],
    ),
  );
}
