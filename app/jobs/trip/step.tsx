"use client";

import { DuctsStep } from "./steps/ducts-step.tsx";
import { EnergyStep } from "./steps/energy-step.tsx";
import { EquipmentStep } from "./steps/equipment-step.tsx";
import { HouseStep } from "./steps/house-step.tsx";
import { LeaksStep } from "./steps/leaks-step.tsx";
import type { OwnInstruments } from "./steps/own-instruments.ts";
import { PlanStep, type RuleOptions } from "./steps/plan-step.tsx";
import { ReadingsStep } from "./steps/readings-step.tsx";
import type { TripStepId } from "./trip-steps.ts";

/** The questions of one step. */
export function Step({ step, rules, own }: { step: TripStepId; rules: RuleOptions; own: OwnInstruments }) {
  switch (step) {
    case "house":
      return <HouseStep />;
    case "equipment":
      return <EquipmentStep />;
    case "ducts":
      return <DuctsStep />;
    case "readings":
      return <ReadingsStep own={own} />;
    case "leaks":
      return <LeaksStep />;
    case "energy":
      return <EnergyStep />;
    case "plan":
      return <PlanStep {...rules} />;
  }
}
