import type { BillFile } from "./billed-use.ts";
import { billProblem } from "./billed-use.ts";
import { readBillsCsv } from "./bills-csv.ts";
import { readGreenButton } from "./green-button.ts";

const MOST_CHARACTERS = 60_000_000;

/**
 * Bills from a file, Green Button (XML) or comma-separated text, told apart by how it begins. `timeZone`, by its IANA
 * name, stands in where a file does not say its local time.
 * @throws InputProblem that names the line or the element, what is wrong and what is allowed.
 */
export function readBillFile(text: string, { timeZone }: { timeZone: string }): BillFile {
  if (text.length > MOST_CHARACTERS)
    throw billProblem({
      at: "file",
      detail: "it is larger than 60 MB",
      fix: "Download fewer years, or longer intervals.",
    });
  return /^\uFEFF?\s*</.test(text) ? readGreenButton(text, timeZone) : readBillsCsv(text);
}
