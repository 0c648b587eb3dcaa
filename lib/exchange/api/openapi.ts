import { z } from "zod";
import { ERROR_TABLE } from "#lib/errors/error-table.ts";
import { API_BASE, type ApiOperation } from "./api-operation.ts";
import { API_SCOPES } from "./api-scope.ts";
import { EXAMPLE_JOB, fillExample } from "./fill-example.ts";
import { API_OPERATIONS } from "./operations.ts";

type Json = Record<string, unknown>;

/** What every failure looks like. */
export const problemSchema = z
  .object({
    type: z.url().meta({ title: "Stable address of the kind of problem; a page there explains it" }),
    title: z.string(),
    status: z.number().int().meta({ unit: "HTTP status" }),
    detail: z.string().meta({ title: "This case, for people" }),
    errors: z
      .array(z.object({ pointer: z.string(), detail: z.string(), code: z.string(), fix: z.string() }))
      .optional()
      .meta({ title: "Each wrong value: where it stands (JSON Pointer), what is wrong, what to do" }),
  })
  .meta({ id: "Problem", title: "Problem details (RFC 9457)" });

/** Schemas with an id become components; the marks that JSON Schema puts at its top have no place inside a document. */
function schemaOf(schema: z.ZodType, components: Json, io: "input" | "output"): Json {
  const { $defs, $schema: _dialect, ...own } = z.toJSONSchema(schema, { io, unrepresentable: "any" }) as Json;
  for (const [name, definition] of Object.entries(($defs ?? {}) as Json)) keep(components, name, definition as Json);
  const { id, ...rest } = own;
  if (typeof id !== "string") return withComponentRefs(own) as Json;
  keep(components, id, rest);
  return { $ref: `#/components/schemas/${id}` };
}

function keep(components: Json, name: string, { id: _id, ...definition }: Json): void {
  components[name] ??= withComponentRefs(definition);
}

function withComponentRefs(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withComponentRefs);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, each]) =>
      key === "$ref" && typeof each === "string"
        ? [key, each.replace("#/$defs/", "#/components/schemas/")]
        : [key, withComponentRefs(each)],
    ),
  );
}

function parametersOf({ path, query, status, example }: ApiOperation, components: Json): Json[] {
  const ids = [...path.matchAll(/\{(\w+)\}/g)].map(([, name = ""]) => ({
    name,
    in: "path",
    required: true,
    schema: { type: "string" },
    ...(example.path?.[name]?.startsWith("{") ? {} : { example: example.path?.[name] }),
  }));
  const asked = query ? ((schemaOf(query, components, "output").properties ?? {}) as Json) : {};
  const queries = Object.entries(asked).map(([name, schema]) => ({ name, in: "query", required: false, schema }));
  const repeat = { $ref: "#/components/parameters/IdempotencyKey" };
  return [...ids, ...queries, ...(status === 201 ? [repeat] : [])];
}

function operationOf(operation: ApiOperation, components: Json, exampleJob: object): Json {
  const { operationId, group, title, description, scope, body, answer, status, example } = operation;
  const parameters = parametersOf(operation, components);
  const exampleBody = fillExample(example.body, { [EXAMPLE_JOB.name]: exampleJob });
  return {
    operationId,
    tags: [group],
    summary: title,
    description,
    security: [{ key: [scope] }],
    ...(parameters.length > 0 ? { parameters } : {}),
    ...(body
      ? {
          requestBody: {
            required: true,
            content: {
              "application/json": {
                schema: schemaOf(body, components, "input"),
                ...(exampleBody === undefined ? {} : { example: exampleBody }),
              },
            },
          },
        }
      : {}),
    responses: {
      [status]: {
        description: title,
        content: { "application/json": { schema: schemaOf(answer, components, "output") } },
      },
      "4XX": { $ref: "#/components/responses/Problem" },
      "5XX": { $ref: "#/components/responses/Problem" },
    },
  };
}

/**
 * The programming interface as OpenAPI 3.1, from the same schemas that check each request.
 * `exampleJob` is the document of `EXAMPLE_JOB`. Source: OpenAPI Specification 3.1.0; RFC 9457 for the problems.
 */
export function openApiDocument(exampleJob: object): Json {
  const schemas: Json = {};
  const paths: Record<string, Json> = {};
  for (const each of API_OPERATIONS) {
    const at = `${API_BASE}${each.path}`;
    paths[at] = { ...paths[at], [each.method.toLowerCase()]: operationOf(each, schemas, exampleJob) };
  }
  schemaOf(problemSchema, schemas, "output");
  return {
    openapi: "3.1.0",
    info: {
      title: "Ductmend",
      version: "1",
      description: "Duct test readings in; leakage, savings, scope and claims that anyone can recompute out.",
    },
    servers: [{ url: "/" }],
    tags: ["Calculate", "Jobs", "Claims"].map((name) => ({ name })),
    paths,
    components: {
      schemas: Object.fromEntries(Object.entries(schemas).sort(([one], [other]) => (one < other ? -1 : 1))),
      parameters: {
        IdempotencyKey: {
          name: "Idempotency-Key",
          in: "header",
          required: false,
          description: "A name of your own for this request. Repeated with the same key it does its work once.",
          schema: { type: "string", maxLength: 200 },
        },
      },
      responses: {
        Problem: {
          description: Object.entries(ERROR_TABLE)
            .filter(([, { status }]) => status >= 400)
            .map(([code, { status, title }]) => `${status} ${code}: ${title}`)
            .join("\n\n"),
          content: { "application/problem+json": { schema: { $ref: "#/components/schemas/Problem" } } },
        },
      },
      securitySchemes: {
        key: {
          type: "http",
          scheme: "bearer",
          description: Object.entries(API_SCOPES)
            .map(([scope, words]) => `${scope}: ${words}`)
            .join("\n\n"),
        },
      },
    },
  };
}
