import { sampleRows } from "#lib/exchange/csv/sample-rows.ts";

/** The sample spreadsheet, to be filled with one's own rows. */
export function GET(): Response {
  return new Response(sampleRows(), {
    headers: {
      "content-type": "text/csv; charset=utf-8",
      "content-disposition": 'attachment; filename="ductmend-rows.csv"',
    },
  });
}
