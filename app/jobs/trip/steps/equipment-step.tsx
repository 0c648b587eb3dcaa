"use client";

import { Disclosure } from "#app/design/worked-out.tsx";
import { type UnitText, unitText } from "#lib/units/unit-text.ts";
import { type Draft, listAt, newId, numberAt, textAt } from "../draft.ts";
import { EntryList } from "../entry-list.tsx";
import { choiceLabel } from "../field-words.ts";
import { ChoiceAt, NumberAt, TextAt } from "../fields.tsx";
import { NotesAt } from "../notes.tsx";
import { useTrip } from "../trip-context.ts";

/** One system among several, in one line. */
function systemFacts(system: Draft, text: UnitText): string {
  const part = (mode: string, size: string) => {
    const kind = textAt(system, `${mode}/kind`);
    const btuPerH = numberAt(system, `${mode}/${size}`);
    if (kind === undefined) return [];
    const label = choiceLabel(`systems/*/${mode}/kind`, kind).toLowerCase();
    return [btuPerH === undefined ? label : `${label}, ${text.quantity(btuPerH, "Btu/h")}`];
  };
  const parts = [...part("heating", "outputBtuPerH"), ...part("cooling", "capacityBtuPerH")];
  return parts.length > 0 ? parts.join(" · ") : "nothing entered yet";
}

export function EquipmentStep() {
  const { draft, units } = useTrip();
  const systems = listAt(draft, "systems");
  const isUsed = (id: string) =>
    [...listAt(draft, "sites"), ...listAt(draft, "tests")].some((entry) => entry.systemId === id);
  return (
    <EntryList
      path="systems"
      title={(system, index) => textAt(system, "label") ?? `System ${index + 1}`}
      facts={systems.length > 1 ? (system) => systemFacts(system, unitText(units)) : undefined}
      addLabel="Add another system"
      makeNew={(list) => {
        const id = newId(list, "system");
        return { id, label: `System ${list.length + 1}`, runs: [] };
      }}
      keepReason={({ id }) => {
        if (systems.length === 1) return "";
        return isUsed(String(id)) ? "Has readings or leaks" : undefined;
      }}
    >
      {(path) => <System path={path} hasSiblings={systems.length > 1} />}
    </EntryList>
  );
}

function System({ path, hasSiblings }: { path: string; hasSiblings: boolean }) {
  const { draft, set } = useTrip();
  const heating = textAt(draft, `${path}/heating/kind`);
  const cooling = textAt(draft, `${path}/cooling/kind`);
  const isFurnace = heating?.endsWith("-furnace") && heating !== "electric-furnace";
  return (
    <>
      <TextAt path={`${path}/label`} hint={hasSiblings ? undefined : "Such as “upstairs”, once there are two."} />
      {hasSiblings ? <NumberAt path={`${path}/servedFloorShare`} /> : null}
      <ChoiceAt
        path={`${path}/heating/kind`}
        isRequired={false}
        unknownLabel="No heating through these ducts"
        onChosen={(kind) =>
          kind === undefined ? set(`${path}/heating`, undefined) : set(`${path}/heating/kind`, kind)
        }
      />
      {heating ? (
        <>
          <NumberAt path={`${path}/heating/outputBtuPerH`} />
          {isFurnace ? (
            <NumberAt path={`${path}/heating/annualEfficiency`} hint="AFUE, on the nameplate or the yellow label." />
          ) : null}
          {heating === "heat-pump" ? (
            <>
              <NumberAt path={`${path}/heating/capacityAt17BtuPerH`} />
              <NumberAt path={`${path}/heating/copAt47Ratio`} />
              <NumberAt path={`${path}/heating/copAt17Ratio`} />
            </>
          ) : null}
        </>
      ) : null}
      <ChoiceAt
        path={`${path}/cooling/kind`}
        isRequired={false}
        unknownLabel="No cooling through these ducts"
        onChosen={(kind) =>
          kind === undefined ? set(`${path}/cooling`, undefined) : set(`${path}/cooling/kind`, kind)
        }
      />
      {cooling ? (
        <>
          <NumberAt
            path={`${path}/cooling/capacityBtuPerH`}
            hint="Sensible and latent together; 12,000 Btu/h is one ton."
          />
          <NumberAt path={`${path}/cooling/seer`} />
        </>
      ) : null}
      <NumberAt path={`${path}/blower/fanFlowCfm`} hint="Air through the air handler while it runs." />
      <ChoiceAt path={`${path}/blower/fanFlowBasis`} />
      <NumberAt path={`${path}/blower/supplyStaticPa`} hint="With reference to the house, while it runs." />
      <NumberAt path={`${path}/blower/returnStaticPa`} />
      <NotesAt path={path} />
      <Disclosure title="More from the nameplates">
        <NumberAt path={`${path}/blower/nameplateStaticPa`} />
        <NumberAt path={`${path}/blower/powerW`} />
        <ChoiceAt path={`${path}/blower/control`} />
        {cooling || heating === "heat-pump" ? <NumberAt path={`${path}/blower/ratedCfmPerTon`} /> : null}
        {heating === "heat-pump" ? (
          <>
            <NumberAt path={`${path}/heating/frostCapacityFactor`} />
            <NumberAt path={`${path}/heating/frostPowerFactor`} />
            <NumberAt path={`${path}/heating/defrostHeatRatio`} />
          </>
        ) : null}
        {heating ? (
          <Stages path={`${path}/heating`} label="Stages of the heating" isHeatPump={heating === "heat-pump"} />
        ) : null}
        {cooling ? (
          <>
            <Stages path={`${path}/cooling`} label="Stages of the cooling" isHeatPump={false} />
            <NumberAt path={`${path}/cooling/sensibleHeatRatio`} />
            <NumberAt path={`${path}/cooling/efficiencyAt95Ratio`} />
          </>
        ) : null}
        <NumberAt path={`${path}/unfoundPressureFraction`} />
      </Disclosure>
    </>
  );
}

/** One stage, or what the low one is over the high one. */
function Stages({ path, label, isHeatPump }: { path: string; label: string; isHeatPump: boolean }) {
  const { draft } = useTrip();
  const staging = textAt(draft, `${path}/staging`);
  return (
    <>
      <ChoiceAt path={`${path}/staging`} label={label} isRow />
      {staging === "two-stage" || staging === "variable" ? (
        <>
          <NumberAt path={`${path}/lowStage/capacityRatio`} />
          <NumberAt path={`${path}/lowStage/flowRatio`} />
          <NumberAt path={`${path}/lowStage/blowerPowerRatio`} />
          {isHeatPump ? null : <NumberAt path={`${path}/lowStage/loadShare`} />}
        </>
      ) : null}
    </>
  );
}
