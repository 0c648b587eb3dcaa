/** A trade term: how it stands in a sentence, and what it means to somebody who has never heard it. */
export interface GlossaryEntry {
  term: string;
  /** Other ways in which it stands in a sentence. */
  also?: readonly string[];
  meaning: string;
}

/** Every trade term of the screens. A test looks for terms without an entry, and for entries that no screen uses. */
export const GLOSSARY = [
  {
    term: "cfm",
    also: ["cubic feet per minute"],
    meaning: "Cubic feet of air in one minute. A bath fan moves 50 to 110; a central air handler 400 to 2,000.",
  },
  {
    term: "at 25 Pa",
    also: ["25 Pa"],
    meaning:
      "Leaks are compared at one pressure, 25 pascals, about a tenth of an inch of water. While the blower runs, each leak has a pressure of its own.",
  },
  {
    term: "at 50 Pa",
    also: ["50 Pa"],
    meaning: "The air leaks of a whole house are compared at 50 pascals, about a fifth of an inch of water.",
  },
  {
    term: "to outside",
    also: ["leakage to outside"],
    meaning: "The part of the leakage that leaves the house. What leaks into the rooms still heats or cools them.",
  },
  {
    term: "total leakage",
    meaning:
      "All air that the ducts lose at the test pressure, wherever it goes: to outside, to the attic, into the rooms.",
  },
  {
    term: "blower-door subtraction",
    also: ["blower-door"],
    meaning:
      "The house is tested twice with a fan in its door, registers open and registers sealed. The difference, corrected, is the leakage to outside.",
  },
  {
    term: "Delta-Q",
    meaning:
      "The house is tested with a fan in its door while the air handler runs and while it rests. The difference tells supply and return leaks at their own pressures.",
  },
  {
    term: "pressure pan",
    meaning:
      "A shallow pan with a hose, held over one register while a fan holds the house under pressure. The more it reads, the leakier the duct behind it.",
  },
  {
    term: "test fan",
    also: ["duct fan"],
    meaning: "A calibrated fan that is taped to the ducts and whose flow is known from its own pressure.",
  },
  {
    term: "flow restrictor",
    also: ["restrictor"],
    meaning: "A plate or ring that makes the test fan's opening smaller, so that small flows can still be read.",
  },
  {
    term: "fan pressure",
    meaning: "The pressure at the test fan's own tap, from which its calibration tells the flow.",
  },
  {
    term: "calibration",
    meaning:
      "What turns a fan's pressure into a flow: for each restrictor and direction a coefficient and an exponent.",
  },
  {
    term: "baseline",
    also: ["baselines"],
    meaning:
      "The pressure that stands in ducts or house while the fan is off, from wind and warm air. It is taken off.",
  },
  {
    term: "house to zone",
    also: ["zone pressure"],
    meaning:
      "The pressure between the rooms and a place such as the attic while the house is held at 50 Pa: near 0 the place belongs to the rooms, near 50 to outside.",
  },
  {
    term: "flow straightener",
    meaning: "A honeycomb before the test fan that calms the air, so that the fan reads right.",
  },
  {
    term: "flow tap",
    meaning: "Where the hose for the fan pressure is plugged into the test fan.",
  },
  {
    term: "air handler",
    meaning: "The box with the blower that moves the air through the ducts; furnace or coil are in it or beside it.",
  },
  {
    term: "fan flow",
    meaning: "Of a test: the air that the test fan blows. Of a system: the air that its blower moves while it runs.",
  },
  {
    term: "plenum",
    also: ["plenums"],
    meaning: "The box at the air handler from which the ducts set out (supply), or in which they end (return).",
  },
  {
    term: "static pressure",
    meaning:
      "What the blower presses against: the pressure in a plenum with reference to the rooms while the system runs.",
  },
  {
    term: "external static pressure",
    meaning: "Supply and return pressure together, as the nameplate states them for the air handler.",
  },
  {
    term: "take-off",
    also: ["take-offs"],
    meaning: "Where a branch leaves the trunk.",
  },
  { term: "boot", also: ["boots"], meaning: "The box at the end of a branch, behind the register." },
  {
    term: "register",
    also: ["registers"],
    meaning: "The opening with slats through which air comes into a room. Where it goes back is a return grille.",
  },
  {
    term: "return grille",
    also: ["return grilles"],
    meaning: "The opening through which air goes back to the air handler.",
  },
  {
    term: "building cavity",
    meaning:
      "A hollow of the house itself, such as the space between joists, used as a duct. It is hard to make tight.",
  },
  { term: "duct board", meaning: "Stiff boards of glass fiber with foil outside, cut and taped to ducts." },
  {
    term: "R-value",
    also: ["duct insulation", "ceiling insulation"],
    meaning:
      "How well insulation holds heat back, in h·ft²·°F/Btu; twice the R-value lets half the heat through. New ducts in an attic often have R-8, older ones R-4.",
  },
  {
    term: "heating output",
    meaning: "The heat that goes into the air, in Btu an hour: what the fuel brings, less what leaves by the chimney.",
  },
  {
    term: "yearly fuel efficiency",
    also: ["AFUE"],
    meaning:
      "Annual fuel utilization efficiency: the share of a year's fuel that becomes heat in the air. 80 to 98 percent.",
  },
  {
    term: "COP",
    meaning: "Coefficient of performance: heat delivered for each unit of electricity. 3 means three for one.",
  },
  {
    term: "SEER",
    meaning:
      "Seasonal energy efficiency ratio: Btu of cooling for each watt-hour over a season. Older units have 10, newer 14 and more.",
  },
  { term: "ton", meaning: "Cooling of 12,000 Btu an hour, what a ton of ice gives while it melts in a day." },
  {
    term: "sensible",
    also: ["sensible heat ratio", "latent"],
    meaning:
      "Of cooling, the part that lowers the temperature is sensible; the part that takes water out of the air is latent.",
  },
  {
    term: "stages",
    meaning: "At how many strengths the equipment can run: one, two, or any (variable speed).",
  },
  {
    term: "regain",
    also: ["regain factor"],
    meaning: "What the rooms get back of the heat that ducts lose to a place, because the place becomes warmer.",
  },
  {
    term: "unconditioned-space factor",
    meaning:
      "How much of the outdoor cold a place around the ducts feels: 0 as warm as the rooms, 1 as cold as outdoors.",
  },
  {
    term: "balance temperature",
    meaning: "Outdoors warmer than this, the house needs no heat (or colder, no cooling): sun and people are enough.",
  },
  {
    term: "heat loss coefficient",
    meaning: "Heat that the house loses in an hour for each degree between indoors and outdoors, ducts left out.",
  },
  {
    term: "conditioned floor area",
    also: ["conditioned volume", "conditioned"],
    meaning: "What is heated or cooled. A garage or an open attic is not conditioned.",
  },
  {
    term: "rough-in",
    meaning: "New ducts before the walls are closed, with or without the air handler.",
  },
  {
    term: "deemed savings",
    meaning: "Savings that a program sets by a table or formula instead of working them out for this house.",
  },
  { term: "therm", also: ["therms"], meaning: "100,000 Btu of heat, the unit on most gas bills; 29.3 kWh." },
  {
    term: "discount rate",
    meaning:
      "What money is worth more today than in a year, above inflation: $103 next year at 3 percent is $100 today.",
  },
  {
    term: "draws",
    meaning:
      "The result is worked out many times with every uncertain value drawn anew; the spread of the answers is the range.",
  },
  {
    term: "not yet found",
    meaning:
      "What the test reads and no tagged leak explains. It is counted, but only a leak that is found can be priced.",
  },
  {
    term: "supply",
    meaning: "The side of the ducts that blows air into the rooms; it stands under pressure and leaks outward.",
  },
  {
    term: "return",
    meaning: "The side that draws air back to the air handler; it sucks, so its leaks draw in attic or crawlspace air.",
  },
  {
    term: "mastic",
    meaning: "A thick paste that hardens and stays a little soft. It seals duct joints better than tape.",
  },
] as const satisfies readonly GlossaryEntry[];
