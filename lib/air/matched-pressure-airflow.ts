import { requireAbove } from "#lib/errors/require-number.ts";
import type { Cfm, Pascals } from "#lib/units/quantity.ts";

/**
 * Fan flow under normal operation from the flow through a calibrated device in its place.
 * Q = Q_device √(P_normal/P_device), P the supply plenum static pressure with reference to the house. Valid when the
 * two pressures differ by less than a factor 4. Source: practice, from memory. Left out: leaks between the device and
 * the blower; they count as fan flow only when the device stands at the blower.
 * @throws InputProblem when a flow or pressure is not above 0 or the pressures are too far apart.
 */
export function matchedPressureAirflow({
  deviceFlowCfm,
  normalPressurePa,
  devicePressurePa,
}: {
  deviceFlowCfm: Cfm;
  normalPressurePa: Pascals;
  devicePressurePa: Pascals;
}): { flowCfm: Cfm } {
  requireAbove({ field: "deviceFlowCfm", label: "Flow through the device", value: deviceFlowCfm, unit: "cfm" });
  requireAbove({ field: "normalPressurePa", label: "Normal plenum pressure", value: normalPressurePa, unit: "Pa" });
  requireAbove({
    field: "devicePressurePa",
    label: "Plenum pressure with the device",
    value: devicePressurePa,
    unit: "Pa",
    limit: normalPressurePa / 4,
    fix: "Bring the plenum closer to its normal pressure, or use another device: the step is too large to trust.",
  });
  return { flowCfm: deviceFlowCfm * Math.sqrt(normalPressurePa / devicePressurePa) };
}
