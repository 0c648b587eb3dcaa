import { airDensityCard } from "./cards/air-density.ts";
import { airflowAfterSealingCard } from "./cards/airflow-after-sealing.ts";
import { atticTemperatureCard } from "./cards/attic-temperature.ts";
import { beforeAfterDifferenceCard } from "./cards/before-after-difference.ts";
import { blowerDoorSubtractionCard } from "./cards/blower-door-subtraction.ts";
import { buildingUaCard } from "./cards/building-ua.ts";
import { changePointFitCard } from "./cards/change-point-fit.ts";
import { conformanceProbabilityCard } from "./cards/conformance-probability.ts";
import { coolingPerformanceCard } from "./cards/cooling-performance.ts";
import { deemedEfficiencySavingsCard } from "./cards/deemed-efficiency-savings.ts";
import { deemedLeakageSavingsCard } from "./cards/deemed-leakage-savings.ts";
import { degreeDaysFromHourlyCard } from "./cards/degree-days-from-hourly.ts";
import { degreeDaysFromMonthlyMeansCard } from "./cards/degree-days-from-monthly-means.ts";
import { deliveryEffectivenessCoolingCard } from "./cards/delivery-effectiveness-cooling.ts";
import { deliveryEffectivenessHeatingCard } from "./cards/delivery-effectiveness-heating.ts";
import { deltaQFitCard } from "./cards/delta-q-fit.ts";
import { deltaQModelCard } from "./cards/delta-q-model.ts";
import { distributionEfficiencyCard } from "./cards/distribution-efficiency.ts";
import { energyChargeCard } from "./cards/energy-charge.ts";
import { equipmentAirflowCard } from "./cards/equipment-airflow.ts";
import { fanFlowCard } from "./cards/fan-flow.ts";
import { guardBandCard } from "./cards/guard-band.ts";
import { heatPumpBinCard } from "./cards/heat-pump-bin.ts";
import { heatPumpPerformanceCard } from "./cards/heat-pump-performance.ts";
import { housePressureCard } from "./cards/house-pressure.ts";
import { leakageAtPressureCard } from "./cards/leakage-at-pressure.ts";
import { leakageReconciliationCard } from "./cards/leakage-reconciliation.ts";
import { lifeCycleCostCard } from "./cards/life-cycle-cost.ts";
import { loadFactorCard } from "./cards/load-factor.ts";
import { loadFactorCoolingCard } from "./cards/load-factor-cooling.ts";
import { lowStageLossesCard } from "./cards/low-stage-losses.ts";
import { matchedPressureAirflowCard } from "./cards/matched-pressure-airflow.ts";
import { moistAirCard } from "./cards/moist-air.ts";
import { monteCarloRangeCard } from "./cards/monte-carlo-range.ts";
import { naturalInfiltrationCard } from "./cards/natural-infiltration.ts";
import { operatingLeakageCard } from "./cards/operating-leakage.ts";
import { orificeAreaCard } from "./cards/orifice-area.ts";
import { powerLawFitCard } from "./cards/power-law-fit.ts";
import { seasonalEfficiencyCard } from "./cards/seasonal-efficiency.ts";
import { seasonsFromBillsCard } from "./cards/seasons-from-bills.ts";
import { temperatureRiseAirflowCard } from "./cards/temperature-rise-airflow.ts";
import { thermalRegainCard } from "./cards/thermal-regain.ts";
import { thermalRegainCoolingCard } from "./cards/thermal-regain-cooling.ts";
import { toOutsideShareCard } from "./cards/to-outside-share.ts";
import { unbalancedInfiltrationCard } from "./cards/unbalanced-infiltration.ts";
import { zoneTemperatureCard } from "./cards/zone-temperature.ts";
import type { MethodCard } from "./method-card.ts";

/** Every calculation of the catalogue, in the order of the trip of the data. */
export const METHODS: readonly MethodCard[] = [
  airDensityCard,
  moistAirCard,
  temperatureRiseAirflowCard,
  matchedPressureAirflowCard,
  fanFlowCard,
  leakageAtPressureCard,
  powerLawFitCard,
  orificeAreaCard,
  toOutsideShareCard,
  blowerDoorSubtractionCard,
  deltaQModelCard,
  deltaQFitCard,
  leakageReconciliationCard,
  operatingLeakageCard,
  airflowAfterSealingCard,
  deliveryEffectivenessHeatingCard,
  deliveryEffectivenessCoolingCard,
  thermalRegainCard,
  thermalRegainCoolingCard,
  loadFactorCard,
  loadFactorCoolingCard,
  unbalancedInfiltrationCard,
  housePressureCard,
  distributionEfficiencyCard,
  zoneTemperatureCard,
  atticTemperatureCard,
  lowStageLossesCard,
  equipmentAirflowCard,
  coolingPerformanceCard,
  heatPumpPerformanceCard,
  heatPumpBinCard,
  seasonalEfficiencyCard,
  degreeDaysFromMonthlyMeansCard,
  degreeDaysFromHourlyCard,
  changePointFitCard,
  seasonsFromBillsCard,
  buildingUaCard,
  naturalInfiltrationCard,
  deemedLeakageSavingsCard,
  deemedEfficiencySavingsCard,
  energyChargeCard,
  lifeCycleCostCard,
  conformanceProbabilityCard,
  guardBandCard,
  monteCarloRangeCard,
  beforeAfterDifferenceCard,
];
