/** The papers of a job that are not the homeowner's proposal, each as a PDF. */
export function PaperLinks({ jobId, hasWork, isVerified }: { jobId: string; hasWork: boolean; isVerified: boolean }) {
  const papers = [
    ...(hasWork
      ? [
          { kind: "crew-sheet", title: "Crew sheet" },
          { kind: "retest-sheet", title: "Retest sheet" },
        ]
      : []),
    ...(isVerified ? [{ kind: "certificate", title: "Certificate" }] : []),
  ];
  if (papers.length === 0) return null;
  return (
    <p>
      Papers (PDF):{" "}
      {papers.map(({ kind, title }, index) => (
        <span key={kind}>
          {index > 0 ? " · " : null}
          <a href={`/jobs/${jobId}/papers/${kind}`}>{title}</a>
        </span>
      ))}
    </p>
  );
}
