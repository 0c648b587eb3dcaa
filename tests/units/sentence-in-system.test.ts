import { expect, test } from "vitest";
import { sentenceInSystem } from "#lib/units/sentence-in-system.ts";

test.each([
  // 1 cfm is 0.4719474 L/s, 1 ft² 0.09290304 m²: exact definitions.
  ["At most 65.6 cfm at 25 Pa.", "At most 65.6 cfm (31 L/s) at 25 Pa."],
  ["From 150 to 30,000 ft².", "From 150 to 30,000 ft² (2,787 m²)."],
  ["1,000 ft cool the air by about 3.5 °F.", "1,000 ft (305 m) cool the air by about 3.5 °F (1.94 K)."],
  // A difference of 9 °F is 5 K; 41 °F is 5 °C, 14 °F is -10 °C.
  ["On average 9 °F cooler.", "On average 9 °F (5 K) cooler."],
  ["At a temperature rise of 45 °F.", "At a temperature rise of 45 °F (25 K)."],
  ["Capacity at 41 °F", "Capacity at 41 °F (5 °C)"],
  ["The air would be 14 °F.", "The air would be 14 °F (-10 °C)."],
  ["Heat pump (14 °F).", "Heat pump (14 °F (-10 °C))."],
  ["A plain 14 °F.", "A plain 14 °F."],
  ["Limit 4 cfm/100 ft², about 168 Pa.", "Limit 4 cfm/100 ft², about 168 Pa."],
  // A mile is 1.609344 km, exactly.
  ["12 miles away and 300 ft higher.", "12 miles (19.3 km) away and 300 ft (91.4 m) higher."],
  ["About a mile away, about a mile off.", "About a mile away, about a mile (1.61 km) off."],
  ["0.45 W for each cfm, a common figure.", "0.45 W for each cfm (0.953 W for each L/s), a common figure."],
])("%s", (sentence, inSi) => {
  expect(sentenceInSystem(sentence, "si")).toBe(inSi);
  expect(sentenceInSystem(sentence, "us")).toBe(sentence);
});
