import { readDailyTemperatures, withMeanOutdoor } from "#lib/exchange/bills/daily-temperatures-csv.ts";
import { readBillFile } from "#lib/exchange/bills/read-bill-file.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { CommandContext } from "./command.ts";
import { readText } from "./read-text.ts";

/**
 * The job with the bills of a file (Green Button or CSV) in the place of its own, and with the mean outdoor temperature of
 * each bill by a file of daily means; what was read is said on stderr. @throws InputProblem that names the line.
 */
export async function withBills(
  job: Job,
  { bills: billFile, temperatures: temperatureFile }: { bills?: string; temperatures?: string },
  context: CommandContext,
): Promise<Job> {
  let bills = job.energy?.bills ?? [];
  if (billFile !== undefined) {
    const { timeZone } = new Intl.DateTimeFormat().resolvedOptions();
    const read = readBillFile(await readText(billFile, context), { timeZone });
    for (const note of read.notes) context.say(`${note}\n`);
    context.say(`${read.bills.length} bills read.\n`);
    bills = read.bills;
  }
  if (temperatureFile !== undefined) {
    const told = withMeanOutdoor(bills, readDailyTemperatures(await readText(temperatureFile, context)));
    context.say(`${told.toldCount} of ${bills.length} bills tell now how warm their days were.\n`);
    bills = told.bills;
  }
  return { ...job, energy: { ...job.energy, bills } };
}
