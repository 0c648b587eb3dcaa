import { z } from "zod";
import { unitOfName } from "#lib/units/unit-of-name.ts";

/** A number in a schema whose name and unit do not go together. */
export interface UnitFault {
  path: string;
  problem: string;
}

interface Node {
  type?: string | string[];
  unit?: string;
  properties?: Record<string, Node>;
  additionalProperties?: Node | boolean;
  items?: Node;
  prefixItems?: Node[];
  anyOf?: Node[];
  oneOf?: Node[];
  allOf?: Node[];
  $ref?: string;
  $defs?: Record<string, Node>;
}

/** Parts of a range: they carry the name and the unit of what they are the range of. */
const RANGE_PARTS = ["value", "p10", "p50", "p90"];

/**
 * Walks a schema and reports each number without a unit, and each whose name promises another unit or none. `exempt`
 * lists the names that stand without a suffix on purpose (their unit must still be stated). `numbersSeen` lets a test
 * prove that the walk looked at something.
 */
export function auditUnits(
  schema: z.ZodType,
  exempt: readonly string[],
  io: "input" | "output" = "output",
): { faults: UnitFault[]; numbersSeen: number } {
  const root = z.toJSONSchema(schema, { io, unrepresentable: "any" }) as Node;
  const faults: UnitFault[] = [];
  let numbersSeen = 0;

  const visit = (node: Node, key: string, path: string, openRefs: readonly string[]): void => {
    if (node.$ref !== undefined) {
      if (openRefs.includes(node.$ref)) return;
      const target = root.$defs?.[node.$ref.replace("#/$defs/", "")];
      if (target) visit({ ...target, ...without$ref(node) }, key, path, [...openRefs, node.$ref]);
      return;
    }
    const types = [node.type].flat();
    if (types.includes("number") || types.includes("integer")) {
      numbersSeen += 1;
      const problem = faultOf(node.unit, key, exempt);
      if (problem) faults.push({ path, problem });
    }
    for (const [name, child] of Object.entries(node.properties ?? {})) {
      visit(child, RANGE_PARTS.includes(name) && key !== "" ? key : name, `${path}.${name}`, openRefs);
    }
    if (typeof node.additionalProperties === "object") visit(node.additionalProperties, key, `${path}.*`, openRefs);
    if (node.items) visit(node.items, key, `${path}[]`, openRefs);
    for (const child of node.prefixItems ?? []) visit(child, key, `${path}[]`, openRefs);
    for (const child of [...(node.anyOf ?? []), ...(node.oneOf ?? []), ...(node.allOf ?? [])]) {
      visit(child, key, path, openRefs);
    }
  };
  visit(root, "", "", []);
  return { faults, numbersSeen };
}

function without$ref({ $ref: _, ...rest }: Node): Node {
  return rest;
}

function faultOf(unit: string | undefined, key: string, exempt: readonly string[]): string | undefined {
  if (unit === undefined) return "states no unit";
  if (exempt.includes(key)) return undefined;
  const promised = unitOfName(key);
  if (promised === undefined) return `has no unit in its name (states ${unit})`;
  return promised === unit ? undefined : `its name promises ${promised}, it states ${unit}`;
}
