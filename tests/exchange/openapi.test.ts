import { readFileSync } from "node:fs";
import { Validator } from "@seriousme/openapi-schema-validator";
import { describe, expect, it } from "vitest";
import { openApiDocument } from "#lib/exchange/api/openapi.ts";
import { API_OPERATIONS } from "#lib/exchange/api/operations.ts";
import { exampleDocument } from "#tests/estimate/example-jobs.ts";

const COMMITTED = new URL("../../public/openapi.json", import.meta.url);
const whole = openApiDocument(exampleDocument("inside-ducts-furnace.json"));
const document = () => JSON.parse(JSON.stringify(whole)) as Record<string, unknown>;

describe("the OpenAPI document", () => {
  it("fits the published schema of OpenAPI 3.1, which refuses a planted fault", async () => {
    const verdict = await new Validator().validate(document());
    expect(verdict.errors).toBeUndefined();
    expect(verdict.valid).toBe(true);
    const planted = document();
    planted.paths = { "/x": { get: { responses: "none" } } };
    expect((await new Validator().validate(planted)).valid).toBe(false);
  });

  it("is committed as the schemas say it now: `npm run -s ductmend -- schema openapi > public/openapi.json`", () => {
    expect(readFileSync(COMMITTED, "utf8")).toBe(`${JSON.stringify(whole, null, 2)}\n`);
  });

  it("has a place for each reference, and an operation for each one that is served", () => {
    const text = JSON.stringify(whole);
    const copy = document();
    const references = [...text.matchAll(/"\$ref":"#\/([^"]+)"/g)].map(([, path]) => path!);
    expect(references.length).toBeGreaterThan(30);
    for (const path of new Set(references)) {
      const target = path.split("/").reduce<unknown>((at, key) => (at as Record<string, unknown>)?.[key], copy);
      expect(target, path).toBeDefined();
    }
    const ids = [...text.matchAll(/"operationId":"(\w+)"/g)].map(([, id]) => id);
    expect(ids.sort()).toEqual(API_OPERATIONS.map(({ operationId }) => operationId).sort());
    expect(new Set(ids).size).toBe(ids.length);
  });
});
