import { actAs } from "#app/jobs/session.ts";
import { ERROR_TABLE } from "#lib/errors/error-table.ts";
import { toProblem } from "#lib/errors/problem-details.ts";

/** The packet byte for byte as it was hashed, for whoever wants to recompute it elsewhere. */
export async function GET(_request: Request, { params }: { params: Promise<{ id: string }> }): Promise<Response> {
  const { id } = await params;
  try {
    const { packet, reference } = await actAs("claim.view", ({ claims }) => claims.find(id));
    return new Response(packet, {
      headers: {
        "content-type": "application/json",
        "content-disposition": `attachment; filename="claim-${reference}.json"`,
      },
    });
  } catch (thrown) {
    const { code, problem } = toProblem(thrown);
    return Response.json(problem, {
      status: ERROR_TABLE[code].status,
      headers: { "content-type": "application/problem+json" },
    });
  }
}
