/** Where ducts and leaks can be. */
export const PLACE_KINDS = [
  "conditioned",
  "attic",
  "vented-crawlspace",
  "unvented-crawlspace",
  "basement",
  "garage",
  "belly",
  "joist-space",
  "below-slab",
  "outside",
] as const;
export type PlaceKind = (typeof PLACE_KINDS)[number];

/** Plain names of the places, as people say them. */
export const PLACE_LABELS: Readonly<Record<PlaceKind, string>> = {
  conditioned: "inside the rooms",
  attic: "attic",
  "vented-crawlspace": "vented crawlspace",
  "unvented-crawlspace": "sealed crawlspace",
  basement: "basement",
  garage: "garage",
  belly: "belly under the floor",
  "joist-space": "joist space between floors",
  "below-slab": "under the slab",
  outside: "outdoors",
};
