import { inputSchemaOf, type SchemaNode } from "#lib/errors/schema-node.ts";
import { jobSchema } from "#lib/job/job-schema.ts";

/** What the schema of the job says of one field, as plain data for the form. */
export interface FieldSpec {
  title: string;
  description?: string;
  unit?: string;
  choices?: readonly string[];
  isRequired: boolean;
}

/** By path, with a star for any place in a list. */
export type FieldSpecs = Readonly<Record<string, FieldSpec>>;

/** All fields of the job. Made on the server, so that the page carries no schema library. */
export function jobFieldSpecs(): FieldSpecs {
  const root = inputSchemaOf(jobSchema);
  const specs: Record<string, FieldSpec> = {};
  visit({ root, node: root, path: "", isRequired: true, specs });
  return specs;
}

interface Visit {
  root: SchemaNode;
  node: SchemaNode;
  path: string;
  isRequired: boolean;
  specs: Record<string, FieldSpec>;
}

function visit({ root, node, path, isRequired, specs }: Visit): void {
  const resolved = resolve(root, node);
  const branches = resolved.oneOf ?? resolved.anyOf;
  if (branches) {
    for (const branch of branches) visit({ root, node: branch, path, isRequired, specs });
    return;
  }
  if (resolved.items) {
    note({ specs, path, node: resolved, isRequired });
    visit({ root, node: resolved.items, path: `${path}/*`, isRequired: true, specs });
    return;
  }
  if (!resolved.properties) {
    note({ specs, path, node: resolved, isRequired });
    return;
  }
  const required = new Set((resolved as { required?: readonly string[] }).required);
  for (const [key, child] of Object.entries(resolved.properties)) {
    visit({ root, node: child, path: path === "" ? key : `${path}/${key}`, isRequired: required.has(key), specs });
  }
}

function note({ specs, path, node, isRequired }: Omit<Visit, "root">): void {
  const { title, description, unit, enum: choices } = node as SchemaNode & { description?: string };
  if (specs[path] || title === undefined) return;
  specs[path] = {
    title,
    isRequired,
    ...(description ? { description } : {}),
    ...(unit ? { unit } : {}),
    ...(choices ? { choices: choices.map(String) } : {}),
  };
}

function resolve(root: SchemaNode, node: SchemaNode): SchemaNode {
  if (node.$ref === undefined) return node;
  const target = root.$defs?.[node.$ref.replace("#/$defs/", "")];
  return { ...target, ...node, $ref: undefined };
}
