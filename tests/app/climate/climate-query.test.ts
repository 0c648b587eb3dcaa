import { describe, expect, it } from "vitest";
import { climateHref } from "#app/climate/climate-href.ts";
import { readClimateQuery } from "#app/climate/climate-query.ts";

const read = (raw: Record<string, string>, units: "us" | "si" = "us") => readClimateQuery(raw, units);

describe("what the climate page is asked for", () => {
  it("nothing asked is no error, and the usual base stands in", () => {
    expect(read({})).toMatchObject({ zip: undefined, heatingBaseF: 65, coolingBaseF: 65, errors: [] });
  });

  it("takes five digits, with or without the four behind", () => {
    expect(read({ zip: " 60601 " }).zip).toBe("60601");
    expect(read({ zip: "60601-1234" }).zip).toBe("60601");
  });

  it.each(["6060", "abcde", "606011"])("says what is wrong with “%s” and keeps it", (zip) => {
    const { errors, typedZip, ...rest } = read({ zip });
    expect(rest.zip).toBeUndefined();
    expect(typedZip).toBe(zip);
    expect(errors).toEqual([{ fieldId: "zip", text: `Enter a ZIP code of five digits, not “${zip}”` }]);
  });

  it("a base is in the degrees that the form was shown in, also after the reader changes units", () => {
    expect(read({ heating: "18", degrees: "C" }).heatingBaseF).toBeCloseTo(64.4, 9);
    expect(read({ heating: "60", degrees: "F" }, "si").heatingBaseF).toBe(60);
    expect(read({ heating: "10" }, "si").heatingBaseF).toBe(50);
  });

  it("refuses a base out of range or not a number, in the reader's unit, and keeps what was typed", () => {
    const wrong = read({ zip: "60601", heating: "150", cooling: "warm" });
    expect(wrong.typedBases).toEqual({ heating: "150", cooling: "warm" });
    expect(wrong.errors.map(({ text }) => text)).toEqual([
      "Heating base must be a temperature from -20 to 110 °F, not “150”",
      "Cooling base must be a temperature from -20 to 110 °F, not “warm”",
    ]);
    expect(read({ zip: "60601", heating: "90", degrees: "C" }, "si").errors[0]!.text).toContain(
      "from -28.9 to 43.3 °C",
    );
  });

  it("speaks of no field that is not there, and takes 18 °C for a reader of SI", () => {
    expect(read({ zip: "6060", heating: "150" }).errors.map(({ fieldId }) => fieldId)).toEqual(["zip"]);
    expect(read({}, "si").heatingBaseF).toBeCloseTo(64.4, 9);
  });

  it("a link carries every answer, and says the same to any reader", () => {
    const asked = { zip: "60601", stationId: "725300", heatingBaseF: 60.5, coolingBaseF: 70 };
    const fields = Object.fromEntries(new URL(climateHref(asked), "http://localhost").searchParams);
    for (const units of ["us", "si"] as const) expect(read(fields, units)).toMatchObject(asked);
  });
});
