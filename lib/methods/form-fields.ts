import { z } from "zod";
import type { MethodCard } from "./method-card.ts";

/** One input of a method as a form shows it. */
export interface FormField {
  name: string;
  title: string;
  description?: string;
  unit?: string;
  kind: "number" | "choice" | "list";
  choices: readonly string[];
  isOptional: boolean;
  /** Said beside an optional field: what stands in when it is left empty. */
  standIn?: string;
}

interface Node {
  type?: string;
  title?: string;
  description?: string;
  unit?: string;
  enum?: readonly string[];
}

/** The fields of a method's live form, from its own schema. */
export function formFields(card: MethodCard): FormField[] {
  const schema = z.toJSONSchema(card.input, { io: "input" }) as {
    properties?: Record<string, Node>;
    required?: string[];
  };
  return Object.entries(schema.properties ?? {}).map(([name, node]) => {
    const standIn = card.defaults[name];
    return {
      name,
      title: node.title ?? name,
      description: node.description,
      unit: node.unit,
      kind: node.enum ? "choice" : node.type === "number" || node.type === "integer" ? "number" : "list",
      choices: node.enum ?? [],
      isOptional: !(schema.required ?? []).includes(name),
      standIn:
        standIn &&
        `${standIn.sameAs ? `the same as ${standIn.sameAs}` : `${standIn.value} ${standIn.unit}`}: ${standIn.reason}`,
    };
  });
}

/**
 * Typed texts as the method's input; empty fields are left out, so that its defaults speak. What is no number or no
 * JSON is handed on as text, and the method's own schema says what is wrong with it.
 */
export function inputOfTexts(
  fields: readonly FormField[],
  texts: Readonly<Record<string, string | undefined>>,
): Record<string, unknown> {
  const entries = fields.flatMap(({ name, kind }): [string, unknown][] => {
    const text = texts[name]?.trim();
    if (!text) return [];
    if (kind === "choice") return [[name, text]];
    if (kind === "number") {
      const value = Number(text.replaceAll(",", ""));
      return [[name, Number.isNaN(value) ? text : value]];
    }
    try {
      return [[name, JSON.parse(text)]];
    } catch {
      return [[name, text]];
    }
  });
  return Object.fromEntries(entries);
}
