import type { Cfm, Pascals, Ratio, Share } from "#lib/units/quantity.ts";

/**
 * The instruments as they really are, which the one who reads them cannot know, and the chance of the day. All numbers
 * are handed in: nothing here draws its own.
 */
export interface Observer {
  gauge: {
    /** −1 to 1: where in the band of its stated accuracy this gauge stands. */
    errorInBand: Ratio;
    accuracyShare: Share;
    accuracyPa: Pascals;
    resolutionPa: Pascals;
    /** Standard deviation of what wind and people add to each reading. */
    noisePa: Pascals;
  };
  /** How much more air the duct fan moves than its calibration says, as a share. */
  ductFanErrorShare: Ratio;
  houseFanErrorShare: Ratio;
  /** Standard normal numbers, one a reading. */
  nextNormal: () => number;
}

/** Instruments without error, for truths and analytic cases. */
export const PERFECT_OBSERVER: Observer = {
  gauge: { errorInBand: 0, accuracyShare: 0, accuracyPa: 0, resolutionPa: 0, noisePa: 0 },
  ductFanErrorShare: 0,
  houseFanErrorShare: 0,
  nextNormal: () => 0,
};

/**
 * What the gauge shows for a pressure.
 * shown = p + e·max(share·|p|, floor) + noise, rounded to the last digit. Source: form of resnet-icc-380 (bounds).
 */
export function shownPressure({ gauge, nextNormal }: Observer, pressurePa: Pascals): Pascals {
  const shownPa = pressurePa + gauge.errorInBand * bandOf(gauge, pressurePa) + gauge.noisePa * nextNormal();
  return gauge.resolutionPa > 0 ? Math.round(shownPa / gauge.resolutionPa) * gauge.resolutionPa : shownPa;
}

/** The pressure that is really there when the fan is turned until the gauge shows a target: the inverse, less noise. */
export function pressureBehind({ gauge }: Observer, shownPa: Pascals): Pascals {
  const nearZeroPa = shownPa - gauge.errorInBand * gauge.accuracyPa;
  const isShareGreater = gauge.accuracyShare * Math.abs(nearZeroPa) > gauge.accuracyPa;
  return isShareGreater ? shownPa / (1 + Math.sign(shownPa) * gauge.errorInBand * gauge.accuracyShare) : nearZeroPa;
}

/** What the house fan's own display shows for a flow. */
export function shownHouseFlow({ houseFanErrorShare }: Observer, flowCfm: Cfm): Cfm {
  return flowCfm / (1 + houseFanErrorShare);
}

function bandOf(gauge: Observer["gauge"], pressurePa: Pascals): Pascals {
  return Math.max(gauge.accuracyShare * Math.abs(pressurePa), gauge.accuracyPa);
}
