import { expect, test } from "vitest";
import { sentenceInSystem } from "#lib/units/sentence-in-system.ts";

test.each([
  // 1 cfm is 0.4719474 L/s, 1 ft² 0.09290304 m²: exact definitions.
  ["At most 65.6 cfm at 25 Pa.", "At most 65.6 cfm (31 L/s) at 25 Pa."],
  ["From 150 to 30,000 ft².", "From 150 to 30,000 ft² (2,787 m²)."],
  ["1,000 ft cool the air by about 3.5 °F.", "1,000 ft (305 m) cool the air by about 3.5 °F."],
  ["Limit 4 cfm/100 ft², about 168 Pa.", "Limit 4 cfm/100 ft², about 168 Pa."],
  ["0.45 W for each cfm, a common figure.", "0.45 W for each cfm, a common figure."],
])("%s", (sentence, inSi) => {
  expect(sentenceInSystem(sentence, "si")).toBe(inSi);
  expect(sentenceInSystem(sentence, "us")).toBe(sentence);
});
