import fc from "fast-check";
import { z } from "zod";

interface Node {
  type?: string;
  enum?: unknown[];
  const?: unknown;
  minimum?: number;
  exclusiveMinimum?: number;
  maximum?: number;
  exclusiveMaximum?: number;
  minItems?: number;
  maxItems?: number;
  pattern?: string;
  properties?: Record<string, Node>;
  required?: string[];
  additionalProperties?: Node | boolean;
  items?: Node;
  anyOf?: Node[];
  oneOf?: Node[];
  $ref?: string;
  $defs?: Record<string, Node>;
}

/**
 * Whatever a schema allows: every number within its limits, every optional field there or not, short lists. Numbers
 * that only have to be above a limit stay at least `clearance` away from it.
 */
export function anyInputOf(schema: z.ZodType, clearance: number): fc.Arbitrary<unknown> {
  const root = z.toJSONSchema(schema, { io: "input", unrepresentable: "any" }) as Node;
  const arbitraryOf = (node: Node): fc.Arbitrary<unknown> => {
    if (node.$ref) return arbitraryOf(root.$defs![node.$ref.replace("#/$defs/", "")]!);
    if (node.const !== undefined) return fc.constant(node.const);
    if (node.enum) return fc.constantFrom(...node.enum);
    const branches = node.anyOf ?? node.oneOf;
    if (branches) return fc.oneof(...branches.map(arbitraryOf));
    switch (node.type) {
      case "integer":
      case "number":
        return anyNumber(node, clearance);
      case "boolean":
        return fc.boolean();
      case "string":
        return fc.constantFrom("a", "b1", "site-2");
      case "null":
        return fc.constant(null);
      case "array": {
        const minLength = node.minItems ?? 0;
        return fc.array(arbitraryOf(node.items ?? {}), {
          minLength,
          maxLength: Math.min(node.maxItems ?? Number.POSITIVE_INFINITY, Math.max(minLength, 8)),
        });
      }
      case "object":
        return anyObject(node, arbitraryOf);
      default:
        return fc.jsonValue();
    }
  };
  return arbitraryOf(root);
}

function anyObject(node: Node, arbitraryOf: (node: Node) => fc.Arbitrary<unknown>): fc.Arbitrary<unknown> {
  const properties = node.properties ?? {};
  const fields = Object.fromEntries(Object.entries(properties).map(([key, child]) => [key, arbitraryOf(child)]));
  return fc.record(fields, { requiredKeys: (node.required ?? []).filter((key) => key in properties) });
}

function anyNumber(node: Node, clearance: number): fc.Arbitrary<number> {
  const low = node.minimum ?? (node.exclusiveMinimum ?? -1e6) + clearance;
  const high = node.maximum ?? (node.exclusiveMaximum ?? 1e6) - clearance;
  if (node.type === "integer") return fc.integer({ min: Math.ceil(low), max: Math.floor(Math.min(high, 1e9)) });
  // The ends themselves, and numbers of a usual size, more often than chance would pick them.
  const picked = [low, high, 0, 0.5, 1, 25, 100, 1000].filter((each) => each >= low && each <= high);
  const within = fc.double({ min: low, max: high, noNaN: true });
  // A quantity so small that dividing by it overflows is drawn only where no clearance is asked for.
  const settled = within.map((each) => (Math.abs(each) < clearance ** 4 && low <= 0 ? 0 : each));
  return fc.oneof(settled, fc.constantFrom(...picked));
}
