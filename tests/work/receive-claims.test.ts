import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { columnsOfHead, guessColumn } from "#app/program/import/table-head.ts";
import { DEMO_IDENTITIES, DEMO_ORGANIZATIONS } from "#lib/access/demo-identities.ts";
import { seedDemo } from "#lib/access/seed-demo.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { receiveClaims } from "#lib/work/claims/receive-claims.ts";
import { type TemporaryDatabase, temporaryDatabase } from "#tests/store/temporary-database.ts";

const { estimator, reviewer } = DEMO_IDENTITIES;
let database: TemporaryDatabase;
beforeAll(async () => {
  database = await temporaryDatabase();
  await seedDemo(database.store, [], ENGINE_VERSION);
});
afterAll(() => database.remove());

async function* texts(text: string) {
  yield text;
}

describe("a file of claims that a reviewer sends", () => {
  it("is taken in line by line, and what is refused is told with its line; nobody else may send one", async () => {
    const send = (actor: typeof reviewer | typeof estimator) =>
      receiveClaims(database.store, actor, {
        texts: texts('number,packet\nx-1,"{"\nx-2,"{""a"":1}"\n'),
        sourceName: "claims.csv",
        contractorId: DEMO_ORGANIZATIONS.contractor.id,
        columns: { claim: "packet", reference: "number" },
      });
    const { batchId: id, helped } = await send(reviewer);
    await helped;
    const batch = await database.store.withOrganization(reviewer, ({ claimBatches }) => claimBatches.find(id));
    expect(batch).toMatchObject({ lineCount: 2, storedCount: 0, refusedCount: 2, state: "finished" });
    const refused = await database.store.withOrganization(reviewer, ({ claimBatches }) =>
      claimBatches.refusedLines(id),
    );
    expect(refused.map(({ line }) => line)).toEqual([2, 3]);
    await expect(send(estimator)).rejects.toMatchObject({ code: "not-allowed" });
  });
});

describe("the columns of a table", () => {
  it("are read from its start as RFC 4180 writes them, and the likely one is offered", () => {
    const columns = columnsOfHead('\uFEFFNumber,"Packet, claim",Firm\r\n1,"a\nb",c');
    expect(columns).toEqual(["Number", "Packet, claim", "Firm"]);
    expect([guessColumn(columns, "claim"), guessColumn(columns, "reference")]).toEqual(["Packet, claim", ""]);
    expect(columnsOfHead("")).toEqual([]);
  });
});
