import type { HeatingKind } from "#lib/job/duct-system.ts";
import type { PlaceKind } from "#lib/job/place.ts";
import { FLOOR_AREA_SPAN_FT2, usualEquipmentSize } from "#lib/job/usual-equipment-size.ts";
import { newJobDocument } from "../jobs/new-job-document.ts";

/** The five answers; what is not answered yet is left out. */
export interface QuickAnswers {
  zip?: string;
  floorAreaFt2?: number;
  equipmentId?: string;
  placeKind?: PlaceKind;
  reading?: { ductPressurePa?: number; flowCfm?: number };
}

interface QuickEquipment {
  id: string;
  label: string;
  heating?: HeatingKind;
  cooling?: "air-conditioner" | "heat-pump";
}

export const QUICK_EQUIPMENT: readonly QuickEquipment[] = [
  {
    id: "gas-and-ac",
    label: "Gas furnace and air conditioner",
    heating: "gas-furnace",
    cooling: "air-conditioner",
  },
  { id: "gas", label: "Gas furnace", heating: "gas-furnace" },
  { id: "heat-pump", label: "Heat pump", heating: "heat-pump", cooling: "heat-pump" },
  {
    id: "electric-and-ac",
    label: "Electric furnace and air conditioner",
    heating: "electric-furnace",
    cooling: "air-conditioner",
  },
  { id: "propane", label: "Propane furnace", heating: "propane-furnace" },
  { id: "oil", label: "Oil furnace", heating: "oil-furnace" },
  { id: "ac", label: "Air conditioner alone", cooling: "air-conditioner" },
];

/** The sizes that the engine takes until the nameplates are read; undefined without a floor area that can be one. */
export function standInSizes({ floorAreaFt2, equipmentId }: QuickAnswers) {
  const equipment = QUICK_EQUIPMENT.find(({ id }) => id === equipmentId);
  const { low, high } = FLOOR_AREA_SPAN_FT2;
  if (!equipment || floorAreaFt2 === undefined || floorAreaFt2 < low || floorAreaFt2 > high) return undefined;
  const { heatingBtuPerH, coolingBtuPerH } = usualEquipmentSize({ floorAreaFt2 });
  return {
    ...(equipment.heating && {
      heatingBtuPerH: equipment.heating === "heat-pump" ? coolingBtuPerH : heatingBtuPerH,
    }),
    ...(equipment.cooling && { coolingBtuPerH }),
  };
}

/** The job that the five answers make: an ordinary one, so that it opens as it is and nothing is typed twice. */
export function quickLookDocument(answers: QuickAnswers, date: string) {
  const { zip, floorAreaFt2, placeKind, reading } = answers;
  const label = zip ? `Quick look, ${zip}` : "Quick look";
  const start = newJobDocument({ label, date, ...(zip ? { zip } : {}) });
  const isInside = placeKind === undefined || placeKind === "conditioned";
  const placeId = isInside ? "rooms" : "ducts";
  const equipment = QUICK_EQUIPMENT.find(({ id }) => id === answers.equipmentId);
  return {
    ...start,
    note: "From a quick look. Read the nameplates; until then the sizes go by the floor area.",
    house: { ...start.house, ...(floorAreaFt2 === undefined ? {} : { conditionedFloorAreaFt2: floorAreaFt2 }) },
    places: isInside ? start.places : [...start.places, { id: placeId, kind: placeKind }],
    systems: start.systems.map((system) => ({
      ...system,
      ...(equipment?.heating && { heating: { kind: equipment.heating } }),
      ...(equipment?.cooling && { cooling: { kind: equipment.cooling } }),
      runs: [
        { id: "supply", side: "supply", placeId },
        { id: "return", side: "return", placeId },
      ],
    })),
    tests: [
      {
        id: "reading",
        kind: "total-leakage",
        stage: "existing",
        systemId: "system-1",
        direction: "pushing",
        points: [reading ?? {}],
      },
    ],
  };
}
