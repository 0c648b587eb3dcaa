import { Path, Svg } from "@react-pdf/renderer";
import { create } from "qrcode";
import { PAPER_INKS } from "#lib/pictures/paper-inks.ts";

const QUIET_MODULES = 4;

/** A link as a QR code: one path of squares, with the quiet margin that readers need. */
export function QrPdf({ text, sizePoints }: { text: string; sizePoints: number }) {
  const { modules } = create(text, { errorCorrectionLevel: "M" });
  const side = modules.size + 2 * QUIET_MODULES;
  let d = "";
  for (let row = 0; row < modules.size; row += 1) {
    for (let column = 0; column < modules.size; column += 1) {
      if (modules.get(row, column)) d += `M${column + QUIET_MODULES} ${row + QUIET_MODULES}h1v1h-1z`;
    }
  }
  return (
    <Svg width={sizePoints} height={sizePoints} viewBox={`0 0 ${side} ${side}`}>
      <Path d={d} fill={PAPER_INKS.ink} />
    </Svg>
  );
}
