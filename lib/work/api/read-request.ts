import type { z } from "zod";
import { inputProblemFromZod } from "#lib/errors/from-zod.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import type { ApiOperation } from "#lib/exchange/api/api-operation.ts";

const LARGEST_BODY_BYTES = 2_000_000;

function read(schema: z.ZodType, input: unknown): unknown {
  const parsed = schema.safeParse(input);
  if (!parsed.success) throw inputProblemFromZod({ error: parsed.error, schema, input });
  return parsed.data;
}

async function readText(request: Request): Promise<string> {
  const tooLarge = () => new InputProblem("body-too-large", [], `At most ${LARGEST_BODY_BYTES} bytes are taken in.`);
  if (Number(request.headers.get("content-length") ?? 0) > LARGEST_BODY_BYTES) throw tooLarge();
  const chunks: Uint8Array[] = [];
  let size = 0;
  // The length may be missing or wrong, so it is counted as it comes.
  for await (const chunk of request.body ?? []) {
    size += chunk.byteLength;
    if (size > LARGEST_BODY_BYTES) throw tooLarge();
    chunks.push(chunk);
  }
  return Buffer.concat(chunks).toString("utf8");
}

function parseText(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new InputProblem("input-not-json", [], "The body is not JSON.");
  }
}

/** Query and body of a request as the operation's schemas read them. @throws InputProblem naming each wrong value. */
export async function readRequest(
  request: Request,
  operation: ApiOperation,
): Promise<{ query: unknown; body: unknown; text: string }> {
  const search = Object.fromEntries(new URL(request.url).searchParams);
  const query = operation.query ? read(operation.query, search) : search;
  if (!operation.body) return { query, body: undefined, text: "" };
  const text = await readText(request);
  return { query, body: read(operation.body, parseText(text)), text };
}
