/** The least contrast of text with what it stands on. Source: WCAG 2.2, success criterion 1.4.3. */
export const LEAST_TEXT_CONTRAST = 4.5;

const HEX = /^#[0-9a-f]{6}$/;
/** Source: WCAG 2.2, relative luminance; the linear part ends at .04045 as in IEC 61966-2-1. */
const linear = (channel: number): number => (channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4);
const channelsOf = (hex: string): number[] => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));

function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = channelsOf(hex).map((channel) => linear(channel / 255));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast of two colors, 1 to 21. Valid for colors written as #rrggbb. Source: WCAG 2.2, contrast ratio. */
export function contrastRatio(first: string, second: string): number {
  const [light = 0, dark = 0] = [luminance(first), luminance(second)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

/** A color as it was typed, written as #rrggbb in small letters; undefined where it is none. */
export function readHexColor(typed: string): string | undefined {
  const plain = typed.trim().toLowerCase().replace(/^#?/, "#");
  const whole = /^#[0-9a-f]{3}$/.test(plain) ? plain.replaceAll(/[0-9a-f]/g, "$&$&") : plain;
  return HEX.test(whole) ? whole : undefined;
}

const STEPS = 100;

/** The nearest darker shade of a color that stands out enough from each of the surfaces; black does from any light one. */
export function readableShade(color: string, surfaces: readonly string[]): string {
  for (let step = 0; step < STEPS; step++) {
    const shade = `#${channelsOf(color)
      .map((channel) =>
        Math.round(channel * (1 - step / STEPS))
          .toString(16)
          .padStart(2, "0"),
      )
      .join("")}`;
    if (surfaces.every((surface) => contrastRatio(shade, surface) >= LEAST_TEXT_CONTRAST)) return shade;
  }
  return "#000000";
}
