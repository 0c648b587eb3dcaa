import { describe, expect, it } from "vitest";
import { type FirmDraft, firmDraftOf, readFirm } from "#app/organization/firm-draft.ts";
import type { Contractor } from "#lib/documents/contractor.ts";

const EMPTY: FirmDraft = firmDraftOf({ name: "Invented Ducts" });

describe("the firm on its form", () => {
  it("comes back as it was kept", () => {
    const firms: Contractor[] = [
      { name: "Invented Ducts" },
      {
        name: "Invented Ducts",
        license: "State license 1",
        address: "1 Made-up Street",
        phone: "555-0142",
        email: "ducts@example.org",
        accentColor: "#0f5566",
        paymentTerms: "Half at the start.",
        missedGoal: { rule: "credit", creditUsdCents: 12_550 },
        financing: { lender: "Invented Bank", yearlyRate: 0.0699, monthsCount: 36 },
      },
      { name: "Invented Ducts", missedGoal: { rule: "work-on" } },
    ];
    for (const firm of firms) expect(readFirm(firmDraftOf(firm))).toEqual(firm);
  });

  it.each([
    [{ name: " " }, "name", /^Enter the name of the firm$/],
    [{ missedGoal: "credit" }, "creditUsd", /Enter what is taken off as a number/],
    [{ missedGoal: "credit", creditUsd: "-5" }, "creditUsd", /from 0|at least 0/],
    [{ lender: "Invented Bank", yearlyRatePercent: "7" }, "monthsCount", /Enter the months as a number/],
    [{ lender: "Invented Bank", yearlyRatePercent: "70", monthsCount: "12" }, "yearlyRatePercent", /0\.5/],
    [{ yearlyRatePercent: "7", monthsCount: "12" }, "lender", /lender/],
    [{ accentColor: "teal" }, "accentColor", /“teal” is not a color/],
    [{ accentColor: "#ffcc00" }, "accentColor", /contrast of 1\.\d .*nearest that can be read is #/],
  ] as [Partial<FirmDraft>, string, RegExp][])("%j is told at its field", (change, fieldId, words) => {
    const read = readFirm({ ...EMPTY, ...change });
    expect(read).toMatchObject({ problems: [{ fieldId, text: expect.stringMatching(words) }] });
  });
});
