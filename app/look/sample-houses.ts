import type { HouseSectionInput } from "#lib/pictures/house/house-section-input.ts";

/** Invented houses for the page of the design system; no such house exists. */
export const ATTIC_HOUSE: HouseSectionInput = {
  kind: "site-built",
  storeysCount: 1,
  places: [
    { id: "rooms", kind: "conditioned" },
    { id: "attic", kind: "attic", note: "118 °F" },
  ],
  rooms: [["bedrooms", "hall", "living room"]],
  systems: [
    {
      id: "main",
      airHandlerPlaceId: "rooms",
      runs: [
        { id: "s1", side: "supply", placeId: "attic", flowCfm: 1080, openingsCount: 5 },
        { id: "r1", side: "return", placeId: "rooms", flowCfm: 1080 },
      ],
      leaks: [
        {
          id: "l1",
          number: 1,
          side: "supply",
          placeId: "attic",
          cfm25: 121,
          label: "supply plenum joint",
          state: "open",
          spot: "plenum",
        },
        {
          id: "l2",
          number: 2,
          side: "supply",
          placeId: "attic",
          cfm25: 38,
          label: "living room boot",
          state: "open",
          spot: "boot",
        },
        {
          id: "l3",
          number: 3,
          side: "supply",
          placeId: "attic",
          cfm25: 22,
          label: "bedroom take-off",
          state: "open",
          spot: "take-off",
        },
        {
          id: "l4",
          number: 4,
          side: "supply",
          placeId: "attic",
          cfm25: 6,
          label: "trunk seam",
          state: "open",
          spot: "trunk",
        },
      ],
      notYetFound: [{ side: "return", cfm25: 44 }],
    },
  ],
};

export const ATTIC_HOUSE_SEALED: HouseSectionInput = {
  ...ATTIC_HOUSE,
  systems: ATTIC_HOUSE.systems.map((system) => ({
    ...system,
    leaks: system.leaks.map((leak) => ({
      ...leak,
      state: leak.number === 4 ? ("open" as const) : ("sealed" as const),
    })),
    notYetFound: [{ side: "return", cfm25: 18 }],
  })),
};

export const TWO_SYSTEM_HOUSE: HouseSectionInput = {
  kind: "site-built",
  storeysCount: 2,
  places: [
    { id: "rooms", kind: "conditioned" },
    { id: "attic", kind: "attic", note: "104 °F" },
    { id: "basement", kind: "basement", note: "62 °F" },
    { id: "garage", kind: "garage" },
  ],
  rooms: [
    ["kitchen", "dining", "living room"],
    ["bedroom", "bath", "bedroom"],
  ],
  systems: [
    {
      id: "up",
      label: "upstairs",
      airHandlerPlaceId: "attic",
      runs: [
        { id: "s1", side: "supply", placeId: "attic", flowCfm: 760, openingsCount: 4 },
        { id: "r1", side: "return", placeId: "attic", flowCfm: 760 },
      ],
      leaks: [
        {
          id: "l1",
          number: 1,
          side: "return",
          placeId: "attic",
          cfm25: 96,
          label: "return boot torn off",
          state: "open",
          spot: "boot",
        },
        {
          id: "l2",
          number: 2,
          side: "supply",
          placeId: "attic",
          cfm25: 41,
          label: "supply collar",
          state: "open",
          spot: "plenum",
        },
        {
          id: "l3",
          number: 3,
          side: "supply",
          placeId: "attic",
          cfm25: 12,
          label: "bath boot",
          state: "open",
          spot: "boot",
        },
      ],
      notYetFound: [{ side: "supply", cfm25: 20 }],
    },
    {
      id: "down",
      label: "downstairs",
      airHandlerPlaceId: "basement",
      runs: [
        { id: "s2", side: "supply", placeId: "basement", flowCfm: 980, openingsCount: 5 },
        { id: "r2", side: "return", placeId: "basement", flowCfm: 980, openingsCount: 2 },
      ],
      leaks: [
        {
          id: "l4",
          number: 4,
          side: "return",
          placeId: "basement",
          cfm25: 150,
          label: "panned joist return",
          state: "open",
          spot: "trunk",
        },
        {
          id: "l5",
          number: 5,
          side: "supply",
          placeId: "basement",
          cfm25: 30,
          label: "trunk end cap",
          state: "open",
          spot: "trunk",
        },
        {
          id: "l6",
          number: 6,
          side: "supply",
          placeId: "basement",
          cfm25: 9,
          label: "kitchen boot",
          state: "sealed",
          spot: "boot",
        },
      ],
      notYetFound: [],
    },
  ],
};

export const CRAWLSPACE_HOUSE: HouseSectionInput = {
  kind: "site-built",
  storeysCount: 1,
  places: [
    { id: "rooms", kind: "conditioned" },
    { id: "crawl", kind: "vented-crawlspace", note: "38 °F" },
    { id: "garage", kind: "garage" },
  ],
  rooms: [["bedroom", "kitchen", "living room"]],
  systems: [
    {
      id: "main",
      airHandlerPlaceId: "garage",
      runs: [
        { id: "s1", side: "supply", placeId: "crawl", flowCfm: 900, openingsCount: 5 },
        { id: "r1", side: "return", placeId: "rooms", flowCfm: 900 },
      ],
      leaks: [
        {
          id: "l1",
          number: 1,
          side: "supply",
          placeId: "crawl",
          cfm25: 88,
          label: "run off its boot",
          state: "open",
          spot: "take-off",
        },
        {
          id: "l2",
          number: 2,
          side: "return",
          placeId: "garage",
          cfm25: 34,
          label: "filter slot",
          state: "open",
          spot: "cabinet",
        },
      ],
      notYetFound: [{ side: "supply", cfm25: 25 }],
    },
  ],
};

export const MANUFACTURED_HOME: HouseSectionInput = {
  kind: "manufactured",
  storeysCount: 1,
  places: [
    { id: "rooms", kind: "conditioned" },
    { id: "belly", kind: "belly" },
  ],
  rooms: [["bedroom", "kitchen", "living room", "bedroom"]],
  systems: [
    {
      id: "main",
      airHandlerPlaceId: "rooms",
      runs: [
        { id: "s1", side: "supply", placeId: "belly", flowCfm: 780, openingsCount: 6 },
        { id: "r1", side: "return", placeId: "rooms", flowCfm: 780 },
      ],
      leaks: [
        {
          id: "l1",
          number: 1,
          side: "supply",
          placeId: "belly",
          cfm25: 110,
          label: "crossover duct",
          state: "open",
          spot: "trunk",
        },
        {
          id: "l2",
          number: 2,
          side: "supply",
          placeId: "belly",
          cfm25: 45,
          label: "missing end cap",
          state: "open",
          spot: "boot",
        },
      ],
      notYetFound: [{ side: "supply", cfm25: 30 }],
    },
  ],
};
