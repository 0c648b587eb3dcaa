import { z } from "zod";

/** The part of a JSON Schema that error messages read. */
export interface SchemaNode {
  readonly type?: string;
  readonly title?: string;
  readonly unit?: string;
  readonly minimum?: number;
  readonly exclusiveMinimum?: number;
  readonly maximum?: number;
  readonly exclusiveMaximum?: number;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly additionalProperties?: SchemaNode | boolean;
  readonly items?: SchemaNode;
  readonly prefixItems?: readonly SchemaNode[];
  readonly anyOf?: readonly SchemaNode[];
  readonly oneOf?: readonly SchemaNode[];
  readonly allOf?: readonly SchemaNode[];
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, SchemaNode>>;
}

/** Each schema is turned once: a document with a thousand wrong rows asks a thousand times. */
const inputSchemas = new WeakMap<z.ZodType, SchemaNode>();

/** A zod schema as the JSON Schema of what may be sent in. */
export function inputSchemaOf(schema: z.ZodType): SchemaNode {
  const known = inputSchemas.get(schema);
  if (known !== undefined) return known;
  const node = z.toJSONSchema(schema, { io: "input", unrepresentable: "any" }) as SchemaNode;
  inputSchemas.set(schema, node);
  return node;
}

function resolve(root: SchemaNode, node: SchemaNode): SchemaNode {
  if (node.$ref === undefined) return node;
  const { $ref, ...beside } = node;
  const target = $ref === "#" ? root : root.$defs?.[$ref.replace("#/$defs/", "")];
  return { ...target, ...beside };
}

/** The forms a value may take at one place: the node itself, or each branch of a union. */
function branches(root: SchemaNode, node: SchemaNode): SchemaNode[] {
  const resolved = resolve(root, node);
  const alternatives = resolved.oneOf ?? resolved.anyOf ?? resolved.allOf;
  return alternatives ? alternatives.flatMap((branch) => branches(root, branch)) : [resolved];
}

/** A branch of a union fits a value unless one of its constants contradicts it. */
function fits(node: SchemaNode, value: unknown): boolean {
  return Object.entries(node.properties ?? {}).every(
    ([key, property]) => property.const === undefined || property.const === (value as Record<string, unknown>)?.[key],
  );
}

/**
 * The node that describes the value at a path, following references, list items and the branch of a union that fits
 * the value's own constants. Undefined where the schema says nothing of that path.
 */
export function schemaNodeAt(root: SchemaNode, path: readonly PropertyKey[], input: unknown): SchemaNode | undefined {
  let nodes = branches(root, root);
  let value = input;
  for (const key of path) {
    const fitting = nodes.filter((node) => fits(node, value));
    nodes = (fitting.length > 0 ? fitting : nodes)
      .flatMap((node) => childOf(node, key) ?? [])
      .flatMap((child) => branches(root, child));
    value = (value as Record<PropertyKey, unknown> | null | undefined)?.[key];
  }
  return nodes.find((node) => fits(node, value)) ?? nodes[0];
}

function childOf(node: SchemaNode, key: PropertyKey): SchemaNode | undefined {
  if (typeof key === "number") return node.prefixItems?.[key] ?? node.items;
  const named = node.properties?.[String(key)];
  if (named !== undefined) return named;
  return typeof node.additionalProperties === "object" ? node.additionalProperties : undefined;
}
