import { PLACE_KINDS, PLACE_LABELS } from "#lib/job/place.ts";

/** How a value of the price book is typed and shown. Money in dollars and cents, shares in percent. */
export type PriceKind = "text" | "money" | "percent" | "hours" | "people" | "cfm" | "amount" | "choice";

export interface PriceField {
  /** Path in the price book for single values; name in its row for lists. */
  name: string;
  /** With the unit in words, since screen readers skip the short form. */
  label: string;
  hint?: string;
  kind: PriceKind;
  isOptional?: boolean;
  options?: readonly { value: string; label: string }[];
}

export interface PriceGroup {
  title: string;
  reason: string;
  fields: readonly PriceField[];
}

export const PRICE_GROUPS: readonly PriceGroup[] = [
  {
    title: "People and hours",
    reason: "Cost, not selling price: overhead and margin are added below.",
    fields: [
      {
        name: "labour/rateUsdCentsPerHour",
        label: "Cost of one person for one hour, in dollars",
        hint: "Wage with taxes and benefits.",
        kind: "money",
      },
      { name: "labour/crewCount", label: "People in the crew", kind: "people" },
      {
        name: "labour/visitHours",
        label: "Working hours of one visit",
        hint: "Hours at the house on one day, after travel. More work needs another visit.",
        kind: "hours",
      },
    ],
  },
  {
    title: "Travel",
    reason: "Charged once for every visit.",
    fields: [
      { name: "travel/visitUsdCents", label: "Vehicle cost of one visit, in dollars", kind: "money" },
      { name: "travel/travelHours", label: "Paid travel of each person per visit, in hours", kind: "hours" },
    ],
  },
  {
    title: "From cost to price",
    reason: "Price = cost × (1 + overhead) ÷ (1 − margin), rounded to the cent once for every line.",
    fields: [
      { name: "overheadRate", label: "Overhead on direct cost, in percent", kind: "percent" },
      { name: "marginShare", label: "Margin as a share of the price, in percent", kind: "percent" },
      {
        name: "minimumUsdCents",
        label: "Least charge for any work, in dollars",
        hint: "Before tax and permits.",
        kind: "money",
      },
    ],
  },
  {
    title: "Tests",
    reason: "Selling price; 0 when a test is not charged.",
    fields: [
      { name: "testInUsdCents", label: "Test before the work, in dollars", kind: "money" },
      { name: "testOutUsdCents", label: "Test after the work, in dollars", kind: "money" },
    ],
  },
];

/** The label without its unit in words, where the unit stands beside the number. */
export const shortLabel = ({ label }: PriceField): string => label.split(", in ")[0] ?? label;

/** Few short values stand in columns with one head for all rows; a rule with many parts is a card of its own. */
export const fitsColumns = ({ fields }: PriceList): boolean => fields.length <= 4;

export type PriceListId = "setUps" | "materials" | "taxes" | "permits" | "rebates";

export interface PriceList {
  id: PriceListId;
  title: string;
  reason: string;
  entry: string;
  addLabel: string;
  fields: readonly PriceField[];
}

const named = (label: string): PriceField => ({ name: "title", label, kind: "text" });

export const PRICE_LISTS: readonly PriceList[] = [
  {
    id: "setUps",
    title: "Setting up in a place",
    reason: "Paid once for a place, however many leaks are sealed there: lights, boards to walk on, covers, suits.",
    entry: "Place",
    addLabel: "Add a place",
    fields: [
      {
        name: "placeKind",
        label: "Kind of place",
        kind: "choice",
        options: PLACE_KINDS.map((value) => ({ value, label: PLACE_LABELS[value] })),
      },
      { name: "labourHours", label: "Person hours to open and close it", kind: "hours" },
      { name: "suppliesUsdCents", label: "Supplies used up, in dollars", kind: "money" },
    ],
  },
  {
    id: "materials",
    title: "Materials",
    reason: "A repair is offered once each of its materials has a price here.",
    entry: "Material",
    addLabel: "Add a material",
    fields: [
      named("Material"),
      { name: "unit", label: "Unit it is bought in", kind: "text" },
      { name: "unitCostUsdCents", label: "Cost of one unit, in dollars", kind: "money" },
      { name: "wasteShare", label: "Bought beyond what is used, in percent", kind: "percent" },
    ],
  },
  {
    id: "taxes",
    title: "Taxes",
    reason: "Rounded to the cent once for each line and tax. Permit fees are passed on untaxed.",
    entry: "Tax",
    addLabel: "Add a tax",
    fields: [
      named("Tax"),
      { name: "taxRate", label: "Rate, in percent", kind: "percent" },
      {
        name: "appliesTo",
        label: "What is taxed",
        kind: "choice",
        options: [
          { value: "materials", label: "Materials" },
          { value: "labour", label: "Labor" },
          { value: "everything", label: "Everything but permits" },
        ],
      },
    ],
  },
  {
    id: "permits",
    title: "Permits",
    reason: "Passed on as they are.",
    entry: "Permit",
    addLabel: "Add a permit",
    fields: [
      named("Permit"),
      { name: "feeUsdCents", label: "Fee, in dollars", kind: "money" },
      {
        name: "neededFor",
        label: "When it is needed",
        kind: "choice",
        options: [
          { value: "any-work", label: "For any work" },
          { value: "replaced-duct", label: "Where duct is replaced" },
        ],
      },
    ],
  },
  {
    id: "rebates",
    title: "Rebates",
    reason: "Told beside the price, and never taken from it.",
    entry: "Rebate",
    addLabel: "Add a rebate",
    fields: [
      named("Rebate"),
      {
        name: "by",
        label: "What it pays",
        kind: "choice",
        options: [
          { value: "flat", label: "A fixed amount" },
          { value: "cfm25-removed", label: "An amount for each cfm at 25 Pa removed" },
          { value: "share-of-price", label: "A share of the price" },
        ],
      },
      {
        name: "amount",
        label: "Amount, in dollars; for a share of the price, in percent",
        kind: "amount",
      },
      { name: "atMostUsdCents", label: "At most, in dollars", kind: "money", isOptional: true },
      {
        name: "measure",
        label: "Which leakage counts",
        kind: "choice",
        options: [
          { value: "total", label: "Total" },
          { value: "to-outside", label: "To outside" },
        ],
      },
      {
        name: "leastRemovedCfm25",
        label: "Removed at least, in cubic feet per minute at 25 pascals",
        kind: "cfm",
        isOptional: true,
      },
      { name: "leastRemovedShare", label: "Share removed at least, in percent", kind: "percent", isOptional: true },
      {
        name: "mostLeftCfm25",
        label: "Left at most, in cubic feet per minute at 25 pascals",
        kind: "cfm",
        isOptional: true,
      },
      { name: "conditionText", label: "Other conditions, in words", kind: "text", isOptional: true },
    ],
  },
];

export const PRICE_UNITS: Readonly<Record<PriceKind, string>> = {
  text: "",
  money: "$",
  percent: "%",
  hours: "h",
  people: "people",
  cfm: "cfm",
  amount: "$ or %",
  choice: "",
};
