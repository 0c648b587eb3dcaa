import { LOW_STAGE } from "#lib/distribution/low-stage.ts";
import type { DuctSystem } from "#lib/job/duct-system.ts";
import type { Ledger } from "../ledger.ts";
import type { ParameterSpace } from "../parameter-space.ts";
import type { Mode } from "../season-bins.ts";

/** The low stage of equipment, over its high one. */
export interface LowStageModel {
  capacityRatio: number;
  flowRatio: number;
  /** Of the blower's power. */
  blowerPowerRatio: number;
  /** Share of the season's need that it meets. A heat pump's follows bin by bin instead. */
  loadShareAt: number;
}

/** Standard uncertainty of the share of the need that the low stage meets. Source: practice, from memory. */
const LOAD_SHARE_DOUBT = 0.1;

const WORDS = {
  capacityRatio: ["Output", "What makers print for equipment with stages; it is on the nameplate."],
  flowRatio: ["Airflow", "Makers let the airflow fall about as far as the output."],
  blowerPowerRatio: ["Blower power", "By the fan law with the airflow; a motor that holds its speed saves less."],
  loadShare: [
    "Share of the need met",
    "Equipment is sized for the coldest and hottest days, so most hours ask for less.",
  ],
} as const;

/** The low stage with its gaps filled, each listed; null for equipment of one stage, which most in place is. */
export function completeLowStage(
  { system, pointer, ledger, space }: { system: DuctSystem; pointer: string; ledger: Ledger; space: ParameterSpace },
  mode: Mode,
): LowStageModel | null {
  const equipment = (mode === "heating" ? system.heating : system.cooling)!;
  const staging = ledger.take(equipment.staging, {
    path: `${pointer}/${mode}/staging`,
    title: `Stages of the ${mode} of ${system.label}`,
    value: "single" as const,
    unit: "",
    reason: "Most equipment in place has one stage.",
    source: { sourceId: "practice" },
  });
  if (staging === "single") return null;
  const take = (key: keyof typeof WORDS) => {
    const { value, unit, source, low, high } = LOW_STAGE[staging][key];
    const [title, reason] = WORDS[key];
    return ledger.take<number>(equipment.lowStage?.[key], {
      path: `${pointer}/${mode}/lowStage/${key}`,
      title: `${title} at the low stage of the ${mode} of ${system.label}`,
      value,
      unit,
      reason,
      source,
      low,
      high,
    });
  };
  const isHeatPump = mode === "heating" && system.heating!.kind === "heat-pump";
  return {
    capacityRatio: take("capacityRatio"),
    flowRatio: take("flowRatio"),
    blowerPowerRatio: take("blowerPowerRatio"),
    loadShareAt: space.add({
      key: `${system.id}/${mode}/lowStageLoadShare`,
      group: "equipment",
      base: isHeatPump ? 0 : take("loadShare"),
      spread: { shape: "absolute", standardUncertainty: isHeatPump ? 0 : LOAD_SHARE_DOUBT, min: 0, max: 1 },
    }),
  };
}
