import { z } from "zod";

/** A stable id, made at the edge and never changed: letters, digits, dot, dash, underscore. */
export const idSchema = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/, "Use 1 to 64 letters, digits, dots, dashes or underscores")
  .meta({ title: "Id" });

export const isoDateSchema = z.iso.date("Enter a date as YYYY-MM-DD").meta({ title: "Date" });
export const sha256Schema = z
  .string()
  .regex(/^[0-9a-f]{64}$/, "Enter a SHA-256 digest: 64 hexadecimal digits")
  .meta({ title: "SHA-256 digest" });
export const shortTextSchema = z.string().trim().min(1).max(200);
export const noteSchema = z.string().max(4000);
