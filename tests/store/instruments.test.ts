import { afterAll, beforeAll, expect, test } from "vitest";
import { DEMO_FAN, DEMO_GAUGE } from "#lib/setup/demo-instruments.ts";
import type { Scope } from "#lib/store/scope.ts";
import { ALPHA, BETA, type TemporaryDatabase, temporaryDatabase } from "./temporary-database.ts";

let database: TemporaryDatabase;
beforeAll(async () => {
  database = await temporaryDatabase();
});
afterAll(() => database.remove());

const as = <T>(who: typeof ALPHA, work: (instruments: Scope["instruments"]) => Promise<T>): Promise<T> =>
  database.store.withOrganization(who, (scope) => work(scope.instruments));
const { id: _fan, ...fan } = DEMO_FAN;
const { id: _gauge, ...gauge } = DEMO_GAUGE;

test("a fan and a gauge come back as they were entered, by the id that jobs will know", async () => {
  const added = await as(ALPHA, (instruments) => instruments.add({ kind: "fan", instrument: fan }));
  await as(ALPHA, (instruments) => instruments.add({ kind: "gauge", instrument: gauge }));
  expect(added.instrument).toEqual({ ...DEMO_FAN, id: added.instrument.id });
  const list = await as(ALPHA, (instruments) => instruments.list());
  expect(list.map(({ kind }) => kind)).toEqual(["fan", "gauge"]);
  expect(await as(ALPHA, (instruments) => instruments.find(added.instrument.id))).toEqual(list[0]);
});

test("a change made on an older state is a conflict, and nothing of it is kept", async () => {
  const [record] = await as(ALPHA, (instruments) => instruments.list());
  const { id } = record!.instrument;
  const rename = (name: string, onUpdatedAt: Date) =>
    as(ALPHA, (instruments) => instruments.change(id, onUpdatedAt, { kind: "fan", instrument: { ...fan, name } }));
  await rename("Recalibrated fan", record!.updatedAt);
  await expect(rename("Lost", record!.updatedAt)).rejects.toMatchObject({ code: "conflict" });
  expect((await as(ALPHA, (instruments) => instruments.find(id))).instrument.name).toBe("Recalibrated fan");
});

test("what is retired stands last and can come back", async () => {
  const [record] = await as(ALPHA, (instruments) => instruments.list());
  const retire = (isRetired: boolean) =>
    as(ALPHA, (instruments) => instruments.retire(record!.instrument.id, isRetired));
  await retire(true);
  const list = await as(ALPHA, (instruments) => instruments.list());
  expect(list.map(({ kind, isRetired }) => [kind, isRetired])).toEqual([
    ["gauge", false],
    ["fan", true],
  ]);
  await retire(false);
  expect((await as(ALPHA, (instruments) => instruments.list())).some(({ isRetired }) => isRetired)).toBe(false);
});

test("another organization neither sees nor changes it", async () => {
  const [record] = await as(ALPHA, (instruments) => instruments.list());
  const { id } = record!.instrument;
  expect(await as(BETA, (instruments) => instruments.list())).toEqual([]);
  for (const attempt of [
    () => as(BETA, (instruments) => instruments.find(id)),
    () => as(BETA, (instruments) => instruments.retire(id, true)),
    () => as(BETA, (instruments) => instruments.change(id, record!.updatedAt, { kind: "fan", instrument: fan })),
    () => as(ALPHA, (instruments) => instruments.find("not-an-id")),
  ])
    await expect(attempt()).rejects.toMatchObject({ code: "not-found" });
});
