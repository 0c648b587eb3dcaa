import { ERROR_TABLE, type ErrorCode } from "#lib/errors/error-table.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { toProblem } from "#lib/errors/problem-details.ts";
import { type MatchedOperation, matchOperation } from "#lib/exchange/api/match-operation.ts";
import { textHash } from "#lib/hash/sha256.ts";
import type { Store } from "#lib/store/open-store.ts";
import type { KeptAnswer } from "#lib/store/repositories/idempotency.ts";
import { authenticate } from "./authenticate.ts";
import { CALCULATION } from "./handlers/calculation.ts";
import { CLAIMS } from "./handlers/claims.ts";
import { JOBS } from "./handlers/jobs.ts";
import { readRequest } from "./read-request.ts";
import type { ApiContext } from "./served.ts";

const SERVED = new Map([...CALCULATION, ...JOBS, ...CLAIMS].map((each) => [each.operationId, each]));
const REPEAT_KEY = /^[\x21-\x7e]{1,200}$/;
const PRIVATE = { "cache-control": "private, no-store" };

/** Answers one request of the programming interface. Every failure leaves as problem details (RFC 9457). */
export async function serveApi(store: Store, request: Request): Promise<Response> {
  try {
    const matched = matchOperation(request.method, new URL(request.url).pathname);
    if ("allowed" in matched) return refuseMethod(request, matched.allowed);
    const actor = await authenticate(store, request.headers.get("authorization"), matched.operation.scope);
    const { status, body } = await answer({ store, actor }, request, matched);
    return Response.json(body, { status, headers: PRIVATE });
  } catch (thrown) {
    return problemResponse(thrown, request);
  }
}

function refuseMethod(request: Request, allowed: readonly string[]): Response {
  if (allowed.length === 0) throw new InputProblem("not-found", [], "No operation has this address.");
  const thrown = new InputProblem("method-not-allowed", [], `Here one can use ${allowed.join(", ")}.`);
  return problemResponse(thrown, request, { allow: allowed.join(", ") });
}

/** Any thrown thing as a response. `type` is absolute, so that whoever keeps the problem can still look it up. */
export function problemResponse(thrown: unknown, request: Request, headers: Record<string, string> = {}): Response {
  const { code, problem } = toProblem(thrown);
  const status = statusOf(code);
  const body = { ...problem, status, type: new URL(problem.type, request.url).href };
  return new Response(JSON.stringify(body), {
    status,
    headers: {
      "content-type": "application/problem+json",
      ...PRIVATE,
      ...(code === "key-unknown" ? { "www-authenticate": "Bearer" } : {}),
      ...headers,
    },
  });
}

/** A claim that differs is an answer of `recompute`; thrown, it cannot stay a success. */
function statusOf(code: ErrorCode): number {
  const { status } = ERROR_TABLE[code];
  return status >= 400 ? status : 422;
}

async function answer(
  context: ApiContext,
  request: Request,
  { operation, path }: MatchedOperation,
): Promise<KeptAnswer> {
  const handler = SERVED.get(operation.operationId);
  if (!handler) throw new Error(`Nothing answers ${operation.operationId}`);
  const { query, body, text } = await readRequest(request, operation);
  const work = async () => ({ status: operation.status, body: await handler.answer(context, { path, query, body }) });
  const key = request.headers.get("idempotency-key");
  if (key === null || operation.status !== 201) return await work();
  if (!REPEAT_KEY.test(key))
    throw new InputProblem("input-unusable", [], "The idempotency key has 1 to 200 printable characters, no blanks.");
  return await once(context, key, textHash(`${request.method} ${new URL(request.url).pathname}\n${text}`), work);
}

/** Does the work of a request once, however often it is repeated with its key. What failed may be tried again. */
async function once(
  { store, actor }: ApiContext,
  key: string,
  requestHash: string,
  work: () => Promise<KeptAnswer>,
): Promise<KeptAnswer> {
  const kept = await store.withOrganization(actor, ({ idempotency }) => idempotency.begin(key, requestHash));
  if (kept) return kept;
  try {
    const fresh = await work();
    await store.withOrganization(actor, ({ idempotency }) => idempotency.keep(key, fresh));
    return fresh;
  } catch (thrown) {
    await store.withOrganization(actor, ({ idempotency }) => idempotency.release(key));
    throw thrown;
  }
}
