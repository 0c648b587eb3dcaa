import { sharedStore } from "#lib/store/shared-store.ts";
import { serveApi } from "#lib/work/api/serve-api.ts";

/** The programming interface: every address under /api/v1, told apart by the operations' own list. */
async function serve(request: Request): Promise<Response> {
  return await serveApi(await sharedStore(), request);
}

export const dynamic = "force-dynamic";
export const GET = serve;
export const POST = serve;
export const PUT = serve;
export const PATCH = serve;
export const DELETE = serve;
