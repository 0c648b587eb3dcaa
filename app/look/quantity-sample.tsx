"use client";

import { useState } from "react";
import { QuantityField } from "#app/design/quantity-field.tsx";
import { readQuantity } from "#app/design/read-quantity.ts";

/** The text as typed, and what was read from it. */
export function QuantitySample() {
  const [text, setText] = useState(" 1,250 cfm");
  const value = readQuantity(text);
  return (
    <QuantityField
      label="Fan flow, in cubic feet per minute"
      hint="Commas, spaces and the unit itself may be typed."
      unit="cfm"
      value={text}
      onChange={(event) => setText(event.currentTarget.value)}
      note={value === undefined ? "No number can be read from this yet." : `Read as ${value}.`}
    />
  );
}
