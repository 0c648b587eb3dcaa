import { whoActs } from "#app/jobs/session.ts";
import { sharedStore } from "#lib/store/shared-store.ts";
import { problemResponse } from "#lib/work/api/serve-api.ts";
import type { ClaimColumns } from "#lib/work/claims/claim-lines.ts";
import { receiveClaims } from "#lib/work/claims/receive-claims.ts";
import { receiveHpxml } from "#lib/work/claims/receive-hpxml.ts";

/** Takes in a file of claims as it streams in, chunk by chunk; or one house as HPXML. */
export async function POST(request: Request): Promise<Response> {
  const query = new URL(request.url).searchParams;
  const optional = (name: string) => query.get(name) || undefined;
  const claimColumn = optional("claim");
  const columns: ClaimColumns | undefined = claimColumn
    ? { claim: claimColumn, contractor: optional("contractorColumn"), reference: optional("reference") }
    : undefined;
  const sourceName = optional("name") ?? "a file";
  try {
    if (/\.xml$/i.test(sourceName)) {
      const received = { text: await request.text(), sourceName, contractorId: optional("contractor") };
      return Response.json(await receiveHpxml(await sharedStore(), await whoActs(), received));
    }
    const { batchId } = await receiveClaims(await sharedStore(), await whoActs(), {
      texts: textsOf(request.body),
      sourceName,
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
