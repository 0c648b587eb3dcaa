/** An invented fan: open, and two restrictors. */
export const INVENTED_RESTRICTORS = [
  {
    restrictorId: "open",
    restrictorLabel: "Open fan",
    coefficient: 100,
    exponent: 0.5,
    minFanPressurePa: 25,
    maxFanPressurePa: 225,
  },
  {
    restrictorId: "medium",
    restrictorLabel: "Medium plate",
    coefficient: 40,
    exponent: 0.5,
    minFanPressurePa: 25,
    maxFanPressurePa: 225,
  },
  {
    restrictorId: "small",
    restrictorLabel: "Small plate",
    coefficient: 10,
    exponent: 0.5,
    minFanPressurePa: 25,
    maxFanPressurePa: 225,
  },
];
