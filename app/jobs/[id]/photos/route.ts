import { InputProblem } from "#lib/errors/input-problem.ts";
import { toProblem } from "#lib/errors/problem-details.ts";
import { readPlainJpeg } from "#lib/exchange/photos/plain-jpeg.ts";
import { actAs } from "../../session.ts";

/** A photo as a phone sends it; the device has made it small already, so more than this is no photo of ours. */
const LARGEST_UPLOAD_BYTES = 3_000_000;

/** Keeps a photo of a leak without what the camera wrote beside it, and says the hash by which the job names it. */
export async function POST(request: Request, { params }: { params: Promise<{ id: string }> }): Promise<Response> {
  const { id } = await params;
  try {
    if (!(Number(request.headers.get("content-length")) <= LARGEST_UPLOAD_BYTES)) {
      throw new InputProblem("input-unusable", [], "A photo may have 3 MB at most on its way in");
    }
    const photo = readPlainJpeg(new Uint8Array(await request.arrayBuffer()));
    const sha256 = await actAs("job.edit", ({ photos }) => photos.add({ jobId: id, ...photo }));
    return Response.json({ sha256 }, { status: 201 });
  } catch (thrown) {
    const { problem } = toProblem(thrown);
    return Response.json(problem, { status: problem.status, headers: { "content-type": "application/problem+json" } });
  }
}
