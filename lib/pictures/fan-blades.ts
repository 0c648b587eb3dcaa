import { coordinate as c } from "./scene.ts";

/** Three blades of a blower wheel. */
export function fanBlades({ cx, cy, r }: { cx: number; cy: number; r: number }): string {
  return [0, 1, 2]
    .map((blade) => {
      const angle = (blade * 2 * Math.PI) / 3 - Math.PI / 2;
      const at = (turn: number, radius: number) =>
        `${c(cx + radius * Math.cos(angle + turn))} ${c(cy + radius * Math.sin(angle + turn))}`;
      return `M${at(0, 1.2)}Q${at(-0.55, r * 0.75)} ${at(0, r)}Q${at(0.75, r)} ${at(0.95, r * 0.62)}Q${at(0.6, r * 0.5)} ${at(0, 1.2)}Z`;
    })
    .join("");
}
