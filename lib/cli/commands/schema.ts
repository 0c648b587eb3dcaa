import { z } from "zod";
import { claimSchema } from "#lib/claims/claim-schema.ts";
import { jobSchema } from "#lib/job/job-schema.ts";
import { resultSchema } from "#lib/job/result/result-schema.ts";
import type { Command } from "../command.ts";
import { usageProblem } from "../usage-problem.ts";

const SCHEMAS: Readonly<Record<string, z.ZodType>> = { job: jobSchema, result: resultSchema, claim: claimSchema };

/** The JSON Schema (2020-12) of a document. */
export const schemaCommand: Command = {
  name: "schema",
  usage: `schema ${Object.keys(SCHEMAS).join("|")}`,
  summary: "Prints the JSON Schema of a document.",
  examples: ["npm run -s ductmend -- schema job > job.schema.json"],
  async run(context) {
    const [name] = context.args;
    const schema = name === undefined ? undefined : SCHEMAS[name];
    if (!schema) throw usageProblem(`Name one document: ${Object.keys(SCHEMAS).join(", ")}.`);
    context.out(`${JSON.stringify(z.toJSONSchema(schema), null, 2)}\n`);
    return 0;
  },
};
