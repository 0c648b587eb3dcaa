import { readFile } from "node:fs/promises";
import { z } from "zod";
import { claimSchema } from "#lib/claims/claim-schema.ts";
import { EXAMPLE_JOB } from "#lib/exchange/api/fill-example.ts";
import { openApiDocument } from "#lib/exchange/api/openapi.ts";
import { jobSchema } from "#lib/job/job-schema.ts";
import { resultSchema } from "#lib/job/result/result-schema.ts";
import type { Command } from "../command.ts";
import { usageProblem } from "../usage-problem.ts";

const jsonSchema = (schema: z.ZodType) => async () => z.toJSONSchema(schema);

const DOCUMENTS: Readonly<Record<string, () => Promise<object>>> = {
  job: jsonSchema(jobSchema),
  result: jsonSchema(resultSchema),
  claim: jsonSchema(claimSchema),
  openapi: async () => openApiDocument(JSON.parse(await readFile(EXAMPLE_JOB.file, "utf8"))),
};

/** The JSON Schema (2020-12) of a document, or the whole programming interface as OpenAPI 3.1. */
export const schemaCommand: Command = {
  name: "schema",
  usage: `schema ${Object.keys(DOCUMENTS).join("|")}`,
  summary: "Prints the JSON Schema of a document, or the programming interface as OpenAPI.",
  examples: [
    "npm run -s ductmend -- schema job > job.schema.json",
    "npm run -s ductmend -- schema openapi > public/openapi.json",
  ],
  async run(context) {
    const [name] = context.args;
    const document = name === undefined ? undefined : DOCUMENTS[name];
    if (!document) throw usageProblem(`Name one document: ${Object.keys(DOCUMENTS).join(", ")}.`);
    context.out(`${JSON.stringify(await document(), null, 2)}\n`);
    return 0;
  },
};
