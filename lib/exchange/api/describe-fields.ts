import { z } from "zod";

/** A field of a body or an answer, in words. */
export interface DescribedField {
  name: string;
  type: string;
  isOptional: boolean;
  says: string;
}

interface Node {
  type?: string;
  $ref?: string;
  enum?: unknown[];
  const?: unknown;
  anyOf?: Node[];
  oneOf?: Node[];
  items?: Node;
  properties?: Record<string, Node>;
  required?: string[];
  title?: string;
  description?: string;
  unit?: string;
  id?: string;
}

/** The fields of a schema one level deep, for the docs; what lies deeper is named by its title. */
export function describeFields(schema: z.ZodType): DescribedField[] {
  const root = z.toJSONSchema(schema, { io: "input", unrepresentable: "any" }) as Node & {
    $defs?: Record<string, Node>;
  };
  const definitions = root.$defs ?? {};
  const resolve = (node: Node): Node =>
    node.$ref ? { ...definitions[node.$ref.slice("#/$defs/".length)], ...node, $ref: undefined } : node;
  const choices = resolve(root).anyOf ?? resolve(root).oneOf ?? [resolve(root)];
  const fields = new Map<string, DescribedField>();
  for (const choice of choices.map(resolve)) {
    for (const [name, node] of Object.entries(choice.properties ?? {})) {
      const isOptional = choices.length > 1 ? false : !choice.required?.includes(name);
      if (!fields.has(name)) fields.set(name, { name, isOptional, ...wordsOf(resolve(node), resolve) });
    }
  }
  return [...fields.values()];
}

function wordsOf(node: Node, resolve: (node: Node) => Node): Pick<DescribedField, "type" | "says"> {
  const unit = node.unit && node.unit !== "count" ? ` (${node.unit})` : "";
  const says = [node.title, node.description].filter(Boolean).join(". ") + unit;
  return { type: typeOf(node, resolve), says };
}

function typeOf(node: Node, resolve: (node: Node) => Node): string {
  if (node.const !== undefined) return JSON.stringify(node.const);
  if (node.enum) return node.enum.map((each) => String(each)).join(" | ");
  if (node.items) return `list of ${typeOf(resolve(node.items), resolve)}`;
  const either = node.anyOf ?? node.oneOf;
  if (either) return [...new Set(either.map((each) => typeOf(resolve(each), resolve)))].join(" | ");
  if (node.type === "object") return node.title ?? "object";
  return node.type ?? "any JSON";
}
