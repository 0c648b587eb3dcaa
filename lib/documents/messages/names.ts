import { LEAK_KINDS, type LeakKindId } from "#lib/job/leak-kinds.ts";
import { PLACE_LABELS, type PlaceKind } from "#lib/job/place.ts";
import { HOUSE_SECTION_WORDS } from "#lib/pictures/house/house-section-words.ts";
import type { Language } from "#lib/pictures/scene.ts";
import { coveringRepairId } from "#lib/scope/leaks-of-one-run.ts";
import { STARTING_CATALOGUE } from "#lib/scope/repairs.ts";
import { EN } from "./en.ts";
import { ES } from "./es.ts";

const LEAK_KINDS_ES: Readonly<Record<LeakKindId, string>> = {
  "disconnected-run": "Un ducto que se soltó",
  "plenum-joint": "Rendija donde la caja principal se une al equipo",
  "air-handler-cabinet": "Rendijas en el gabinete del equipo",
  "filter-slot": "Ranura abierta del filtro",
  "boot-to-drywall": "Rendija alrededor de la caja de una rejilla",
  "take-off": "Rendija donde un ramal sale del ducto principal",
  "panned-joist-return": "Vigas del piso usadas como ducto de retorno",
  "platform-return": "Base hueca bajo el equipo usada como retorno",
  "flexible-connection": "Extremo suelto de un ducto flexible",
  seam: "Costura abierta en un ducto de metal",
  "cracked-board": "Ducto de tablero rajado o pelado",
  "damaged-run": "Ducto roto o aplastado",
  "building-cavity": "Hueco de pared o techo usado como ducto",
  "missing-end-cap": "Ducto principal abierto en su extremo",
  crossover: "Ducto que une las dos mitades de una casa móvil",
  belly: "Fugas en el vientre de una casa móvil",
  other: "Otra fuga",
};

/** By the id of the repair in the catalogue that the product starts with; a test holds the two lists together. */
const REPAIRS_ES: Readonly<Record<string, string>> = {
  "mastic-with-mesh": "Sellar la rendija con masilla a brocha sobre malla de vidrio",
  "backed-mastic": "Cubrir la rendija ancha y sellarla con masilla sobre malla",
  "patch-and-mastic": "Cerrar el hueco con un parche rígido y sellar sus bordes",
  "listed-foil-tape": "Pegar cinta de metal aprobada para este ducto",
  "cabinet-gasket": "Poner empaques en las tapas y sellar tubos y cables",
  "filter-slot-cover": "Poner una tapa justa en la ranura del filtro, que aún se abra a mano",
  "boot-sealant": "Sellar entre la caja de la rejilla y el techo, la pared o el piso",
  "refasten-and-seal": "Poner el ducto en su lugar, fijarlo y sellar la unión",
  "band-and-mastic": "Sujetar con abrazadera y sellar el ducto flexible en su cuello",
  "replace-run": "Cambiar el ducto dañado por uno nuevo y sellado",
  "replace-board-section": "Cambiar el tramo roto de tablero",
  "seal-joist-bay": "Cerrar los extremos del hueco entre vigas y sellar sus bordes",
  "seal-platform": "Forrar y sellar la base hueca bajo el equipo",
  "line-cavity": "Poner un ducto de verdad dentro del hueco",
  "new-return": "Hacer un ducto de retorno nuevo y cerrar el paso viejo",
  "end-cap": "Cerrar el extremo del ducto principal con una tapa sellada",
  "belly-repair": "Sellar los ductos del vientre y volver a cerrarlo",
  "spray-from-inside": "Sellar fugas chicas desde dentro con sellador rociado",
};

/** Titles of assumptions by the last part of their path; a test holds them to what the engine assumes. */
const ASSUMPTIONS_ES: Readonly<Record<string, string>> = {
  regainFactor: "Calor que vuelve a la casa",
  unconditionedFactor: "Qué tan frío o caliente se pone el lugar",
  ceilingRValue: "Aislante del piso del ático",
  insulation: "Aislante del lugar",
  roofColor: "Color del techo",
  houseToZonePressurePa: "Parte de una fuga que llega afuera",
  servedFloorShare: "Parte de la casa que atiende el sistema",
  fanFlowCfm: "Aire que mueve el equipo",
  powerW: "Potencia del ventilador",
  control: "Control del ventilador",
  supplyStaticPa: "Presión en la caja de suministro",
  returnStaticPa: "Presión en la caja de retorno",
  staging: "Etapas del equipo",
  capacityRatio: "Potencia en la etapa baja, sobre la alta",
  flowRatio: "Aire en la etapa baja, sobre la alta",
  blowerPowerRatio: "Potencia del ventilador en la etapa baja, sobre la alta",
  loadShare: "Parte de la temporada que cubre la etapa baja",
  efficiencyAt95Ratio: "Eficiencia del aire frío a 95 °F afuera, sobre la de 82 °F",
  outputBtuPerH: "Potencia de la calefacción",
  capacityBtuPerH: "Potencia del aire frío",
  annualEfficiency: "Eficiencia anual del calefactor",
  capacityAt17BtuPerH: "Potencia a 17 °F",
  copAt47Ratio: "Rendimiento a 47 °F",
  copAt17Ratio: "Rendimiento a 17 °F",
  frostCapacityFactor: "Capacidad que deja la escarcha a 35 °F",
  frostPowerFactor: "Potencia que deja la escarcha a 35 °F",
  defrostHeatRatio: "Resistencia durante el descongelado a 35 °F",
  ratedCfmPerTon: "Caudal nominal por tonelada",
  buriedRValue: "Lo que añade el aislamiento del ático encima",
  seer: "Eficiencia del aire frío en la temporada",
  sensibleHeatRatio: "Parte del frío que baja la temperatura",
  areaFt2: "Superficie de los ductos",
  insulationRValue: "Aislante de los ductos",
  material: "Material de los ductos",
  size: "Tamaño de la fuga",
  relativeUncertaintyRatio: "Duda del tamaño de la fuga",
  reach: "Qué tan fácil es llegar a la fuga",
  heatingSetpointF: "Termostato en invierno",
  coolingSetpointF: "Termostato en verano",
  coolingHumidityShare: "Humedad adentro en verano",
  modelFactor: "Exactitud del cálculo mismo",
  roofUValue: "Calor que deja pasar el techo",
  ventilationCfmPerFt2: "Aire de afuera por el ático",
  unfoundPressureFraction: "Parte de la presión tras las fugas no halladas",
  sunGainHeatingBtuPerHFt2: "Sol por las ventanas en invierno",
  sunGainCoolingBtuPerHFt2: "Sol por las ventanas en verano",
  sensibleLoadShare: "Parte del frío necesario que es calor y no humedad",
  naturalInfiltrationCfm: "Aire por las fugas propias de la casa",
  envelopeExponentRatio: "Exponente de las fugas de aire de la casa",
  electricityPerDayKWh: "Electricidad diaria que no calienta ni enfría",
  naturalGasPerDayTherms: "Gas diario que no calienta la casa",
  propanePerDayGallons: "Propano diario que no calienta la casa",
  fuelOilPerDayGallons: "Aceite diario que no calienta la casa",
  electricityWinterSwingShare: "Luces y aparatos: invierno sobre el promedio",
  fuelWinterSwingShare: "Agua caliente y cocina: invierno sobre el promedio",
  coilMoistureShare: "Humedad de las fugas que quita el aire acondicionado",
  envelopeUaBtuPerHF: "Calor que pierde la casa por grado",
  heatingBalanceF: "Frío afuera desde el que hace falta calor",
  coolingBalanceF: "Calor afuera desde el que hace falta frío",
  heating: "Calor que pide la casa al año",
  cooling: "Frío que pide la casa al año",
  storeysCount: "Pisos de la casa",
  bedroomsCount: "Cuartos de dormir",
  builtYear: "Año de la casa",
  elevationFt: "Altura sobre el mar",
  electricityUsdPerKWh: "Precio de la luz",
  otherElectricityKWh: "Luz para todo lo demás, al año",
  otherNaturalGasTherms: "Gas para todo lo demás, al año",
  naturalGasUsdPerTherm: "Precio del gas",
  propaneUsdPerGallon: "Precio del propano",
  fuelOilUsdPerGallon: "Precio del aceite de calefacción",
  fuelEscalationRate: "Alza anual de la energía sobre la inflación",
  discountRate: "Tasa de descuento sobre la inflación",
  measureLifeYears: "Años que dura el sellado",
  priceBook: "Lista de precios",
  repairs: "Efecto, horas y material de los arreglos",
  offersSprayedSealant: "La cuadrilla puede rociar sellador por dentro",
  confidenceProbability: "Con qué seguridad llegar a la meta",
  targetMeasure: "Qué fuga limita la meta",
};

export function leakKindName(language: Language, kind: LeakKindId): string {
  return language === "es" ? LEAK_KINDS_ES[kind] : LEAK_KINDS[kind].label;
}

export function placeName(language: Language, kind: PlaceKind): string {
  return language === "es" ? HOUSE_SECTION_WORDS.es.place[kind] : PLACE_LABELS[kind];
}

/** The repair as a homeowner reads it; one that is not in the catalogue keeps the title of the result. */
export function repairName(language: Language, repairId: string, fallback: string): string {
  if (coveringRepairId(repairId) !== null) return (language === "es" ? ES : EN)["repair.covered"];
  if (language === "es") return REPAIRS_ES[repairId] ?? fallback;
  return STARTING_CATALOGUE.repairs.find(({ id }) => id === repairId)?.plainTitle ?? fallback;
}

export function assumptionName(language: Language, path: string, fallback: string): string {
  return language === "es" ? (ASSUMPTIONS_ES[path.split("/").pop() ?? ""] ?? fallback) : fallback;
}
