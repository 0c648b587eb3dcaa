"use client";

import Link from "next/link";
import { Notice } from "#app/design/notice.tsx";
import { StatGrid } from "#app/design/stat-block.tsx";
import { useTrip } from "../trip-context.ts";

/** What is found and what is still hidden, where to look, and what to measure: it follows every leak and reading. */
export function WalkStatus() {
  const { jobId, walk } = useTrip();
  return walk?.groups.map(({ id, title, state, quarters, next, measure, above }) => (
    <section key={id} aria-label={title ? `Where the walk stands, ${title}` : "Where the walk stands"}>
      {title ? <h2>{title}</h2> : null}
      {above.length > 0 ? (
        <Notice kind="doubt" title="Found leaks add up to more than was measured" isLive>
          <p>
            {above.join(" ")} Look at the largest one again, or at the test: a cover that came off, or a leak that was
            closed meanwhile. Until then every found leak is held to what was measured.
          </p>
        </Notice>
      ) : null}
      {state ? <p role="status">{state}</p> : null}
      {quarters.length > 0 ? <StatGrid stats={quarters} /> : null}
      {next ? (
        <Notice kind="info" word="Look" title="Where to look next">
          <p>{next}</p>
        </Notice>
      ) : null}
      {measure ? (
        <Notice
          kind="info"
          word="Measure"
          title="What would tell most"
          actions={<Link href={`/jobs/${jobId}/readings`}>Go to the readings</Link>}
        >
          <p>{measure}</p>
        </Notice>
      ) : null}
    </section>
  ));
}
