import type { Claim } from "../claim-schema.ts";
import { type ClaimFlag, flag } from "./claim-flag.ts";

/** Instruments used before they were calibrated or after the calibration ran out. */
export function instrumentFlags({ job }: Pick<Claim, "job">): ClaimFlag[] {
  const instruments = [...(job.instruments?.fans ?? []), ...(job.instruments?.gauges ?? [])];
  const known = new Map(instruments.map((each) => [each.id, each]));
  const evidence = job.tests.flatMap(({ id, date, fanId, gaugeId }, index) =>
    [fanId, gaugeId].flatMap((instrumentId) => {
      const instrument = known.get(instrumentId ?? "");
      if (!instrument || !date) return [];
      const { name, calibrationDate, calibrationDueDate } = instrument;
      const path = `#/job/tests/${index}`;
      if (calibrationDueDate && date > calibrationDueDate)
        return [{ path, says: `${id} is of ${date}; the calibration of ${name} ran out on ${calibrationDueDate}` }];
      if (calibrationDate && date < calibrationDate)
        return [{ path, says: `${id} is of ${date}; ${name} was calibrated on ${calibrationDate} only` }];
      return [];
    }),
  );
  return flag("instrument-out-of-calibration", evidence);
}
