import { type LeakKindId, leakageOfBand, SIZE_BANDS } from "#lib/job/leak-kinds.ts";
import type { LeakSite } from "#lib/job/leak-site.ts";
import type { TrueHouse, TrueLeak } from "#lib/simulate/true-house.ts";
import type { Chance } from "./chance.ts";
import { isIndoors } from "./study-house.ts";

/** What the walker calls a leak, by where it sits. */
function kindOf(chance: Chance, network: TrueHouse, leak: TrueLeak): LeakKindId {
  if (leak.branchId === undefined) {
    return leak.side === "supply"
      ? chance.pick(["plenum-joint", "air-handler-cabinet", "plenum-joint", "seam"])
      : chance.pick(["air-handler-cabinet", "filter-slot", "platform-return", "building-cavity"]);
  }
  const { duct, register } = network.branches.find(({ id }) => id === leak.branchId)!;
  // Share of the run's pressure that stands at the leak: the register's part.
  const atNode = duct.flowCfm25 ** 2 / (duct.flowCfm25 ** 2 + register.flowCfm25 ** 2);
  return atNode < 0.3 ? "boot-to-drywall" : chance.pick(["take-off", "flexible-connection", "damaged-run"]);
}

/** A leak as the eye judges it: off by half as like as not, said as a number or as the width of a gap. */
export function siteOf(chance: Chance, network: TrueHouse, leak: TrueLeak): LeakSite {
  const kind = kindOf(chance, network, leak);
  const seenCfm25 = leak.flowCfm25 * chance.lognormal(0.45);
  const size: LeakSite["size"] = chance.isTrue(0.5)
    ? { from: "estimate", estimateCfm25: seenCfm25 }
    : {
        from: "band",
        band: SIZE_BANDS.reduce((best, band) =>
          Math.abs(Math.log(leakageOfBand(kind, band) / seenCfm25)) <
          Math.abs(Math.log(leakageOfBand(kind, best) / seenCfm25))
            ? band
            : best,
        ),
      };
  return {
    id: leak.id,
    systemId: "main",
    side: leak.side,
    placeId: isIndoors(leak.zoneId) ? "rooms" : leak.zoneId,
    kind,
    size,
  };
}

/** Careful work leaves about what is expected; one repair in ten fails in part. Not the estimate's normal spread. */
export function trueRemainingShare(chance: Chance, expected: number): number {
  return chance.isTrue(0.9) ? expected * chance.uniform(0.2, 1.6) : chance.uniform(0.15, 0.5);
}
