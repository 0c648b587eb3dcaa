import { toProblem } from "#lib/errors/problem-details.ts";
import { actAs } from "../../../session.ts";

interface Address {
  params: Promise<{ id: string; sha256: string }>;
}

/** A photo of a leak. Its name is its content, so a browser may keep it as long as it likes. */
export async function GET(_request: Request, { params }: Address): Promise<Response> {
  const { id, sha256 } = await params;
  try {
    const content = await actAs("job.view", ({ photos }) => photos.find(id, sha256));
    return new Response(Uint8Array.from(content), {
      headers: {
        "content-type": "image/jpeg",
        "cache-control": "private, max-age=31536000, immutable",
        "x-content-type-options": "nosniff",
      },
    });
  } catch (thrown) {
    return problemResponse(thrown);
  }
}

/** Deletes a photo for good, unless a claim has bound it. */
export async function DELETE(_request: Request, { params }: Address): Promise<Response> {
  const { id, sha256 } = await params;
  try {
    await actAs("job.edit", ({ photos }) => photos.remove(id, sha256));
    return new Response(null, { status: 204 });
  } catch (thrown) {
    return problemResponse(thrown);
  }
}

function problemResponse(thrown: unknown): Response {
  const { problem } = toProblem(thrown);
  return Response.json(problem, { status: problem.status, headers: { "content-type": "application/problem+json" } });
}
