import type { z } from "zod";
import type { MemberActor } from "#lib/access/actor.ts";
import type { ApiOperation } from "#lib/exchange/api/api-operation.ts";
import type { Store } from "#lib/store/open-store.ts";

/** Who asks, and where the work is done. */
export interface ApiContext {
  store: Store;
  actor: MemberActor;
}

export interface ApiInput<Query, Body> {
  path: Readonly<Record<string, string>>;
  query: Query;
  body: Body;
}

/** An operation with the function that answers it. */
export interface Served {
  operationId: string;
  answer(context: ApiContext, input: ApiInput<unknown, unknown>): Promise<unknown>;
}

/** Binds an operation to its function; query and body arrive as its schemas read them. */
export function served<Query extends z.ZodType, Body extends z.ZodType, Answer extends z.ZodType>(
  { operationId }: ApiOperation<Query, Body, Answer>,
  answer: (context: ApiContext, input: ApiInput<z.output<Query>, z.output<Body>>) => Promise<z.input<Answer>>,
): Served {
  return {
    operationId,
    answer: (context, input) => answer(context, input as ApiInput<z.output<Query>, z.output<Body>>),
  };
}
