import { expect } from "vitest";
import { COMPACT_WIDTH, type Scene, type SceneOptions, WIDE_WIDTH } from "#lib/pictures/scene.ts";
import { strayShapes } from "./scene-bounds.ts";

/** What holds for every picture, at both widths and in both languages. */
export function expectSoundScene(build: (options: SceneOptions) => Scene): void {
  for (const width of [COMPACT_WIDTH, WIDE_WIDTH]) {
    for (const language of ["en", "es"] as const) {
      const scene = build({ width, language });
      expect(strayShapes(scene)).toEqual([]);
      expect(scene.width).toBe(width);
      expect(scene.height).toBeGreaterThan(0);
      expect(scene.shapes.length).toBeGreaterThan(0);
      const words = [scene.title, scene.finding, scene.note ?? "", ...scene.table.rows.flat()].join(" ");
      expect(words).not.toMatch(/NaN|undefined|null|Infinity|∞/);
      expect(scene.finding).toMatch(/[.!]$/);
      for (const row of scene.table.rows) expect(row).toHaveLength(scene.table.columns.length);
      expect(build({ width, language })).toEqual(scene);
    }
  }
}
