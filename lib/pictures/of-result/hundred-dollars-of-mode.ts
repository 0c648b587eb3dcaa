import type { Destination, DistributionMode } from "#lib/job/result/leakage-result.ts";
import type { DollarSplit, HundredDollarsInput } from "../hundred-dollars.ts";

const HUNDRED = 100;

const split = ({ roomsShare, regainedShare, outsideShare }: Destination): DollarSplit => ({
  roomsUsd: HUNDRED * roomsShare,
  regainedUsd: HUNDRED * regainedShare,
  lostUsd: HUNDRED * outsideShare,
  blowerUsd: 0,
});

/** Of every $100 of heat or cold that the equipment makes over a season: what reaches the rooms, before and after. */
export function hundredDollarsOfMode({
  use,
  mode,
  hasWork,
}: {
  use: "heating" | "cooling";
  mode: DistributionMode;
  hasWork: boolean;
}): HundredDollarsInput {
  return {
    use,
    before: split(mode.destinationBefore),
    ...(hasWork ? { after: split(mode.destinationAfter) } : {}),
  };
}
