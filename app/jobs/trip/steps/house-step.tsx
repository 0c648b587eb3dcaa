"use client";

import { Disclosure } from "#app/design/worked-out.tsx";
import { newId, textAt } from "../draft.ts";
import { EntryList } from "../entry-list.tsx";
import { ChoiceAt, FlagAt, NumberAt, TextAt } from "../fields.tsx";
import { NotesAt } from "../notes.tsx";
import { useTrip } from "../trip-context.ts";
import { ClimateLink } from "./climate-link.tsx";
import { OwnWeather } from "./own-weather.tsx";

export function HouseStep() {
  const { draft } = useTrip();
  return (
    <>
      <TextAt path="house/label" />
      <TextAt
        path="house/zip"
        inputMode="numeric"
        hint="It brings the weather, the energy prices and the elevation."
        isNeeded={textAt(draft, "house/stationId") === undefined}
      />
      <ClimateLink zip={textAt(draft, "house/zip")} stationId={textAt(draft, "house/stationId")} />
      <ChoiceAt path="house/kind" />
      <NumberAt path="house/conditionedFloorAreaFt2" hint="Heated and cooled floor, all stories together." />
      <NumberAt path="house/storeysCount" />
      <NumberAt path="house/builtYear" />
      <FlagAt path="house/hasCombustionAppliance" hint="Sealing changes house pressures, so its draft is tested." />
      <NotesAt path="house" />
      <Disclosure title="More about the house, if you know it">
        <NumberAt path="house/bedroomsCount" />
        <NumberAt path="house/volumeFt3" hint="Floor area times ceiling height." />
        <NumberAt path="house/envelopeLeakageCfm50" hint="From a test of the whole house." />
        <NumberAt path="house/heatingSetpointF" />
        <NumberAt path="house/coolingSetpointF" />
        <NumberAt path="house/coolingHumidityShare" />
        <NumberAt path="house/coilMoistureShare" hint="The rest makes the rooms more humid and leaves with the air." />
        <NumberAt path="house/elevationFt" />
        <TextAt path="house/stationId" />
        <OwnWeather />
        <NumberAt path="house/envelopeUaBtuPerHF" hint="From a heat load calculation of this house." />
        <NumberAt path="house/naturalInfiltrationCfm" />
        <NumberAt path="house/envelopeExponentRatio" hint="From a house test at several pressures." />
        <NumberAt path="house/sensibleLoadShare" />
        <NumberAt path="house/sunGainHeatingBtuPerHFt2" />
        <NumberAt path="house/sunGainCoolingBtuPerHFt2" />
        <NumberAt path="house/heatingBalanceF" hint="Outdoors warmer than this, no heat is needed." />
        <NumberAt path="house/coolingBalanceF" hint="Outdoors cooler than this, no cooling is needed." />
      </Disclosure>
      <Disclosure title="Walls, ceiling, floor and windows one by one">
        <p>Where all of them are known, they stand in for the usual construction of a house of its age.</p>
        <EntryList
          path="house/envelopeParts"
          title={(part, index) => textAt(part, "title") ?? `Part ${index + 1}`}
          addLabel="Add a part"
          makeNew={(list) => ({ id: newId(list, "part"), title: `Part ${list.length + 1}` })}
        >
          {(path) => (
            <>
              <TextAt path={`${path}/title`} hint="Such as “north wall”." />
              <NumberAt path={`${path}/areaFt2`} />
              <NumberAt path={`${path}/partUValue`} />
            </>
          )}
        </EntryList>
      </Disclosure>
      <Disclosure title="About the visit">
        <TextAt path="title" label="What to call this job" />
        <TextAt path="date" label="Date of the visit" hint="As 2026-11-25." />
        <TextAt path="note" label="Note for the office" />
      </Disclosure>
    </>
  );
}
