/** The papers of a job that are not the homeowner's proposal: to read on a phone, and to print. */
export function PaperLinks({ jobId, hasWork, isVerified }: { jobId: string; hasWork: boolean; isVerified: boolean }) {
  const papers = [
    ...(hasWork
      ? [
          { kind: "crew-sheet", title: "Crew sheet" },
          { kind: "retest-sheet", title: "Retest plan" },
        ]
      : []),
    ...(isVerified ? [{ kind: "certificate", title: "Certificate" }] : []),
  ];
  if (papers.length === 0) return null;
  return (
    <p>
      Papers:{" "}
      {papers.map(({ kind, title }, index) => (
        <span key={kind}>
          {index > 0 ? " · " : null}
          <a href={`/jobs/${jobId}/papers/${kind}/open`}>{title}</a> (
          <a href={`/jobs/${jobId}/papers/${kind}`} aria-label={`${title} as PDF`}>
            PDF
          </a>
          )
        </span>
      ))}
    </p>
  );
}
