import { whoActs } from "#app/jobs/session.ts";
import { sharedStore } from "#lib/store/shared-store.ts";
import { problemResponse } from "#lib/work/api/serve-api.ts";
import { claimTable } from "#lib/work/claims/claim-columns.ts";
import { filterOf } from "../claim-filters.tsx";

/** The claims that the list shows, all pages of it, as a comma-separated table. */
export async function GET(request: Request): Promise<Response> {
  const search = Object.fromEntries(new URL(request.url).searchParams);
  try {
    const { cursor: _fromTheStart, ...filter } = filterOf(search);
    const lines = claimTable(await sharedStore(), await whoActs(), filter);
    const first = await lines.next();
    const encoder = new TextEncoder();
    const body = new ReadableStream<Uint8Array>({
      start: (stream) => stream.enqueue(encoder.encode(first.value ?? "")),
      async pull(stream) {
        const { value, done } = await lines.next();
        if (done) stream.close();
        else stream.enqueue(encoder.encode(value));
      },
    });
    return new Response(body, {
      headers: {
        "content-type": "text/csv; charset=utf-8; header=present",
        "content-disposition": 'attachment; filename="claims.csv"',
      },
    });
  } catch (thrown) {
    return problemResponse(thrown, request);
  }
}
