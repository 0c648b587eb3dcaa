import { rankRestrictors } from "#lib/air/choose-restrictor.ts";
import type { JobContext } from "../proposal/proposal-context.ts";

/** Plates that are told: the one that reads best, and one in case it is not at hand. */
const MOST_PLATES = 2;

/**
 * What the gauge of the test fan shows at a flow with the ducts held at 25 Pa: "24 Pa or less with Ring B". By the
 * calibration of the fan that made the first test, at the density that the estimate took for its air; empty where the
 * job holds none in that direction or no flow restrictor reads so little or so much within its span.
 */
export function gaugeReading({ job, result, speaker }: JobContext, flowCfm: number): string {
  const { retest } = result;
  const measured = retest?.measure === "to-outside" ? "leakage-to-outside" : "total-leakage";
  const test = job.tests.find(({ kind, stage }) => kind === measured && stage !== "retest");
  const fans = job.instruments?.fans ?? [];
  const fan = fans.find(({ id }) => test && "fanId" in test && id === test.fanId) ?? fans[0];
  const direction = test && "direction" in test ? test.direction : "pushing";
  const restrictors = fan?.calibrations.filter((row) => row.direction === direction) ?? [];
  if (!fan || restrictors.length === 0 || !(flowCfm > 0)) return "";
  const density = result.trace.find(({ methodId }) => methodId === "air-density")?.outputs.densityLbPerFt3;
  const readings = rankRestrictors({
    restrictors,
    flowCfm,
    ...(typeof density === "number" ? { fanAirDensityLbPerFt3: density } : {}),
    ...(fan.calibrationDensityLbPerFt3 === undefined
      ? {}
      : { calibrationDensityLbPerFt3: fan.calibrationDensityLbPerFt3 }),
  })
    .filter(({ marginRatio }) => marginRatio >= 1)
    .slice(0, MOST_PLATES)
    .map(({ restrictorLabel, fanPressurePa }) =>
      speaker.say("crew.gaugeAt", { pressure: speaker.number(fanPressurePa), plate: restrictorLabel }),
    );
  return readings.length === 0 ? "" : speaker.say("crew.gauge", { readings: readings.join("; ") });
}
