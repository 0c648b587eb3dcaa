import type { Prisma } from "./generated/client.ts";

/** A document on its way into a JSON column. Its schema is lib/job's concern; Prisma only wants to hear that it is JSON. */
export function toJson(document: object): Prisma.InputJsonValue {
  return document as Prisma.InputJsonValue;
}
