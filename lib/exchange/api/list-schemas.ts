import { z } from "zod";

const LONGEST_LIST = 500;
const LONGEST_CURSOR = 200;

/** How much of a list, and from where. Numbers of an address come as text. */
export const pageQuery = {
  limit: z.coerce
    .number("Enter a whole number")
    .int()
    .min(1)
    .max(LONGEST_LIST)
    .optional()
    .meta({ unit: "count", title: "Most items", description: `At most ${LONGEST_LIST}; 50 when left out.` }),
  cursor: z
    .string()
    .max(LONGEST_CURSOR)
    .optional()
    .meta({ title: "Where to go on", description: "`nextCursor` of the page before." }),
};

/** One page of a list, the newest first. */
export const pageOf = <Item extends z.ZodType>(item: Item) =>
  z.strictObject({
    items: z.array(item),
    nextCursor: z.string().optional().meta({ title: "Cursor of the next page", description: "Absent on the last." }),
  });

export const rowIdSchema = z.uuid("Enter an id as the lists show it").meta({ title: "Id" });
export const instantSchema = z.iso.datetime().meta({ title: "Instant, UTC" });
