import { z } from "zod";

/** What makes an answer doubtful, beside the answer. Empty when nothing does. */
export const notesField = z
  .array(
    z.strictObject({
      code: z.string(),
      severity: z.enum(["note", "doubt", "problem"]),
      what: z.string(),
      why: z.string(),
      nextMove: z.string(),
    }),
  )
  .readonly()
  .meta({ title: "What makes the answer doubtful" });
