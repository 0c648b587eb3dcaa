import { whoActs } from "#app/jobs/session.ts";
import { sharedStore } from "#lib/store/shared-store.ts";
import { problemResponse } from "#lib/work/api/serve-api.ts";
import type { ClaimColumns } from "#lib/work/claims/claim-lines.ts";
import { receiveClaims } from "#lib/work/claims/receive-claims.ts";

/** Takes in a file of claims as it streams in, chunk by chunk. */
export async function POST(request: Request): Promise<Response> {
  const query = new URL(request.url).searchParams;
  const optional = (name: string) => query.get(name) || undefined;
  const claimColumn = optional("claim");
  const columns: ClaimColumns | undefined = claimColumn
    ? { claim: claimColumn, contractor: optional("contractorColumn"), reference: optional("reference") }
    : undefined;
  try {
    const { batchId } = await receiveClaims(await sharedStore(), await whoActs(), {
      texts: textsOf(request.body),
      sourceName: optional("name") ?? "a file",
      contractorId: optional("contractor"),
      columns,
    });
    return Response.json({ batchId });
  } catch (thrown) {
    return problemResponse(thrown, request);
  }
}

async function* textsOf(body: ReadableStream<Uint8Array> | null): AsyncGenerator<string> {
  const decoder = new TextDecoder();
  for await (const chunk of body ?? []) yield decoder.decode(chunk, { stream: true });
  yield decoder.decode();
}
