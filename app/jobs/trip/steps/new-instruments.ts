import type { Draft } from "../draft.ts";

/** A fan of which only the name is known: the numbers come from its owner's papers. */
export const NEW_FAN: Draft = {
  name: "My test fan",
  calibrations: [{ restrictorId: "open", restrictorLabel: "Open fan", direction: "pushing" }],
  needsFlowStraightenerWhenPulling: true,
  tapReference: { pushing: "air-around-fan", pulling: "duct-side-air" },
  restrictorSide: "inlet",
};
/** A gauge of which only the name is known. */
export const NEW_GAUGE: Draft = { name: "My gauge" };
