import type { Economics, Verdict } from "#lib/job/result/plan-result.ts";
import type { Ranged } from "#lib/job/result/ranged.ts";
import { formatUsd } from "#lib/units/format.ts";

interface Input {
  economics: Economics | null;
  hasTarget: boolean;
  reachesTarget: boolean | null;
  /** Rooms that get clearly more air, worse humidity avoided, pressure imbalance: said beside, never in the sum. */
  otherReasons: readonly string[];
}

const low = ({ value, p10 }: Ranged): number => p10 ?? value;
const high = ({ value, p90 }: Ranged): number => p90 ?? value;

/**
 * Worth sealing when P10 of the lifetime net savings is not negative, not worth it when P90 is negative, else marginal.
 * Without draws the value stands for all three. Comfort, safety and code stand beside it and never change it.
 */
export function judgeWorth({ economics, hasTarget, reachesTarget, otherReasons }: Input): Verdict {
  if (!economics)
    return {
      code: "not-worth-sealing",
      reason: "No leak was found that is worth its repair, so there is nothing to pay back.",
      otherReasons: [...otherReasons],
    };
  const net = economics.netSavingsUsd;
  const years = economics.measureLifeYears;
  const code = low(net) >= 0 ? "worth-sealing" : high(net) < 0 ? "not-worth-sealing" : "marginal";
  const span = `between ${formatUsd(low(net))} and ${formatUsd(high(net))}`;
  const reason = {
    "worth-sealing": `Over ${years} years it saves more than it costs, even at the low end: ${span} after paying for the work.`,
    marginal: `Over ${years} years it may or may not pay for itself: ${span} after paying for the work.`,
    "not-worth-sealing": `Over ${years} years it costs more than it saves, even at the high end: ${span} after paying for the work.`,
  }[code];
  const target =
    hasTarget && reachesTarget === false ? ["The target cannot be reached with the leaks found so far."] : [];
  return { code, reason, otherReasons: [...otherReasons, ...target] };
}
