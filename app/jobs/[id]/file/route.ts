import { InputProblem } from "#lib/errors/input-problem.ts";
import { toProblem } from "#lib/errors/problem-details.ts";
import { actAs } from "../../session.ts";

const IS_REVISION = /^[1-9]\d{0,8}$/;

/** The job as a file: the very document that is kept, so that it can be sent, edited by hand and opened again. */
export async function GET(request: Request, { params }: { params: Promise<{ id: string }> }): Promise<Response> {
  const { id } = await params;
  const asked = new URL(request.url).searchParams.get("revision");
  try {
    const document = await actAs("job.view", async ({ jobs }) => {
      if (asked !== null && IS_REVISION.test(asked)) return (await jobs.findRevision(id, Number(asked))).document;
      return (await jobs.findCurrent(id)).revision?.document;
    });
    if (document === undefined) throw new InputProblem("not-found", [], "This job has no entries yet");
    return new Response(`${JSON.stringify(document, null, 2)}\n`, {
      headers: {
        "content-type": "application/json; charset=utf-8",
        "content-disposition": `attachment; filename="${fileName(document)}"`,
      },
    });
  } catch (thrown) {
    const { problem } = toProblem(thrown);
    return Response.json(problem, { status: problem.status, headers: { "content-type": "application/problem+json" } });
  }
}

/** By the id of the job in the document, which is made of letters, digits and dashes. */
function fileName(document: unknown): string {
  const { id } = document as { id?: unknown };
  return typeof id === "string" && /^[\w-]{1,64}$/.test(id) ? `${id}.json` : "job.json";
}
