import type { Savings } from "#lib/job/result/energy-result.ts";
import type { TraceStep } from "#lib/job/result/evidence-result.ts";
import type { Leakage } from "#lib/job/result/leakage-result.ts";
import { FUEL_LABELS } from "../fuels.ts";
import { CELLS } from "../kernel/house-state.ts";
import type { AssembleInput } from "./assemble-result.ts";

type Input = Pick<AssembleInput, "house" | "measurements" | "kernel" | "worth" | "reference">;

function measureSteps({ measurements }: Input): TraceStep[] {
  return measurements.map((each) => ({
    id: `measure/${each.testId}`,
    methodId: each.methodId,
    title: `Test “${each.testId}” read at 25 Pa`,
    inputs: Object.fromEntries(
      each.steps.flatMap((step, index) => [
        [`points/${index}/pressurePa`, step.pressurePa],
        [`points/${index}/flowCfm`, step.flowCfm],
      ]),
    ),
    outputs: {
      leakageCfm: each.cfm25,
      standardUncertaintyCfm25: each.standardUncertaintyCfm25,
      ...(each.fit
        ? { exponent: each.fit.exponent, coefficient: each.fit.coefficient, rSquared: each.fit.rSquared }
        : {}),
    },
    source: { sourceId: each.fit ? "astm-e779" : "astm-e1554" },
  }));
}

function apportionSteps({ house, kernel }: Input): TraceStep[] {
  return house.groups.map((group, g) => ({
    id: `apportion/${group.systemIndexes.map((s) => house.systems[s]!.id).join("+")}`,
    methodId: "leakage-reconciliation",
    title: "Leaks made to agree with the tests",
    inputs: {
      ...Object.fromEntries(group.before.map((each) => [`measurements/${each.measure}/cfm25`, each.cfm25])),
      ...Object.fromEntries(
        group.siteIndexes.map((i) => [`sites/${house.sites[i]!.id}/priorCfm25`, house.sites[i]!.priorCfm25]),
      ),
    },
    outputs: {
      ...Object.fromEntries(
        group.siteIndexes.map((i) => [`sites/${house.sites[i]!.id}/cfm25`, kernel.before.siteCfm25[i]!]),
      ),
      ...Object.fromEntries(
        CELLS.map(({ side, isOutside }, c) => [
          `notYetFound/${side}/${isOutside ? "outside" : "inside"}`,
          kernel.before.cellCfm25[g]![c]!,
        ]),
      ),
    },
    source: { sourceId: "own-method" },
  }));
}

function systemSteps({ house, kernel }: Input): TraceStep[] {
  return house.systems.flatMap((system, s) =>
    (["before", "after"] as const).flatMap((when): TraceStep[] => {
      const state = kernel[when].systems[s]!;
      const base = house.space.parameters;
      return [
        {
          id: `operating/${system.id}/${when}`,
          methodId: "operating-leakage",
          title: `Leaks of ${system.label} while it runs, ${when} the work`,
          inputs: {
            supplyStaticPa: base[system.supplyStaticAt]!.base,
            returnStaticPa: base[system.returnStaticAt]!.base,
          },
          outputs: {
            supplyLeakageCfm: state.leaks.supplyAllCfm,
            returnLeakageCfm: state.leaks.returnAllCfm,
            supplyToOutsideCfm: state.leaks.supplyOutsideCfm,
            returnToOutsideCfm: state.leaks.returnOutsideCfm,
          },
          source: { sourceId: "practice" },
        },
        {
          id: `airflow/${system.id}/${when}`,
          methodId: "airflow-after-sealing",
          title: `Airflow of ${system.label}, ${when} the work`,
          inputs: { fanFlowCfm: base[system.fanFlowAt]!.base, fanSlopeCfmPerPa: system.fanSlopeCfmPerPa },
          outputs: {
            fanFlowCfm: state.fanFlowCfm,
            externalStaticPa: state.externalStaticPa,
            deliveredCfm: state.deliveredCfm,
          },
          source: { sourceId: "derived" },
        },
        ...(["heating", "cooling"] as const).flatMap((mode): TraceStep[] => {
          const modeState = state.modes[mode];
          if (!modeState) return [];
          const equipment = mode === "heating" ? system.heating! : system.cooling!;
          return [
            {
              id: `distribution/${system.id}/${mode}/${when}`,
              methodId: `delivery-effectiveness-${mode}`,
              title: `Distribution of ${system.label} on the ${mode} design day, ${when} the work`,
              inputs: {
                fanFlowCfm: state.fanFlowCfm,
                capacityBtuPerH: base[equipment.capacityAt]!.base,
                outdoorTemperatureF: (mode === "heating" ? house.designHeating : house.designCooling).temperatureF[0]!,
                supplyLeakageCfm: state.leaks.supplyToZone.reduce((sum, each) => sum + each, 0),
                returnLeakageCfm: state.leaks.returnToZone.reduce((sum, each) => sum + each, 0),
                infiltrationOnCfm: kernel[when].infiltrationOnCfm,
              },
              outputs: {
                distributionEfficiency: modeState.designEfficiency,
              },
              source: { sourceId: "ashrae-152" },
            },
          ];
        }),
      ];
    }),
  );
}

function billSteps({ house }: Input): TraceStep[] {
  return house.loads.billed.map(({ fuel, periodsCount, billedDays, yearly }) => ({
    id: `bills/${fuel}`,
    methodId: "change-point-fit",
    title: `What the ${FUEL_LABELS[fuel]} bills say of a typical year`,
    inputs: { model: yearly.choice.model, periodsCount, billedDays },
    outputs: {
      heatingUse: yearly.heatingUse,
      coolingUse: yearly.coolingUse,
      ...(yearly.baseUsePerDay === null ? {} : { baseUsePerDay: yearly.baseUsePerDay }),
      ...(yearly.choice.fit
        ? {
            cvRmse: yearly.choice.fit.cvRmse,
            nmbe: yearly.choice.fit.nmbe,
            rSquared: yearly.choice.fit.rSquared,
          }
        : {}),
    },
    source: { sourceId: "ashrae-guideline-14" },
  }));
}

function loadSteps({ house, kernel }: Input): TraceStep[] {
  return house.loads.groups.map((group, g) => ({
    id: `loads/${group.mode}/${group.fuel}`,
    methodId: group.fuel === "electricity" && group.mode === "heating" ? "heat-pump-bin" : "seasonal-efficiency",
    title: `Yearly ${group.mode} need met by ${group.fuel}`,
    inputs: {
      evidence: group.used.from,
      useBtu: group.used.useBtu,
      uaBtuPerHF: house.loads.uaBtuPerHF,
      balanceF: group.mode === "heating" ? house.loads.heatingBalanceF : house.loads.coolingBalanceF,
      degreeDays: (group.mode === "heating" ? house.loads.heating : house.loads.cooling).degreeDays,
    },
    outputs: { loadBtu: kernel.loadBtu[g]! },
    source: { sourceId: "derived" },
  }));
}

/** The steps of the calculation in the order of the trip, at the best estimates. */
export function traceOf(input: Input, leakage: Leakage, savings: Savings): TraceStep[] {
  const { house } = input;
  return [
    {
      id: "air",
      methodId: "air-density",
      title: "Air in the ducts",
      inputs: { temperatureF: 70, elevationFt: house.elevationFt },
      outputs: { densityLbPerFt3: house.airDensityLbPerFt3 },
      source: { sourceId: "iso-2533" },
    },
    ...measureSteps(input),
    ...apportionSteps(input),
    ...billSteps(input),
    ...loadSteps(input),
    ...systemSteps(input),
    {
      id: "savings",
      methodId: "seasonal-efficiency",
      title: "Saved in a year",
      inputs: { totalCfm25: leakage.totalCfm25.value },
      outputs: {
        electricityKWh: savings.electricityKWh.value,
        naturalGasTherms: savings.naturalGasTherms.value,
        propaneGallons: savings.propaneGallons.value,
        fuelOilGallons: savings.fuelOilGallons.value,
        costUsdPerYear: savings.costUsdPerYear.value,
        co2LbPerYear: savings.co2LbPerYear.value,
      },
      source: { sourceId: "derived" },
    },
  ];
}
