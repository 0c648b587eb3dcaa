import { textBox } from "#lib/pictures/boxes.ts";
import type { PlainShape, Scene } from "#lib/pictures/scene.ts";

/** All shapes, items opened. */
export function plainShapes(scene: Scene): PlainShape[] {
  return scene.shapes.flatMap((shape) => (shape.kind === "item" ? [...shape.shapes] : [shape]));
}

/** The points a path passes through, without control points. */
export function pathPoints(d: string): { x: number; y: number }[] {
  const points: { x: number; y: number }[] = [];
  let at = { x: 0, y: 0 };
  for (const [, command = "", rest = ""] of d.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    const numbers = (rest.match(/-?\d*\.?\d+(?:e-?\d+)?/g) ?? []).map(Number);
    const size = { m: 2, l: 2, c: 6, q: 4, a: 7, z: 0 }[command.toLowerCase()];
    if (size === undefined) throw new Error(`The path command ${command} is not known here.`);
    for (let index = 0; size > 0 && index + size <= numbers.length; index += size) {
      const [x = Number.NaN, y = Number.NaN] = numbers.slice(index + size - 2, index + size);
      at = command === command.toLowerCase() ? { x: at.x + x, y: at.y + y } : { x, y };
      points.push(at);
    }
  }
  return points;
}

/** Every corner of a shape that must lie on the sheet. */
function cornersOf(shape: PlainShape): { x: number; y: number }[] {
  switch (shape.kind) {
    case "path":
      return pathPoints(shape.d);
    case "rect":
      return [
        { x: shape.x, y: shape.y },
        { x: shape.x + shape.width, y: shape.y + shape.height },
      ];
    case "circle":
      return [
        { x: shape.cx - shape.r, y: shape.cy - shape.r },
        { x: shape.cx + shape.r, y: shape.cy + shape.r },
      ];
    case "text": {
      const box = textBox(shape);
      return [
        { x: box.x, y: box.y },
        { x: box.x + box.width, y: box.y + box.height },
      ];
    }
  }
}

/** Shapes that leave the sheet by more than the slack, or have a corner that is no number. */
export function strayShapes(scene: Scene, slack = 2): PlainShape[] {
  return plainShapes(scene).filter((shape) =>
    cornersOf(shape).some(
      ({ x, y }) => !(x >= -slack && y >= -slack && x <= scene.width + slack && y <= scene.height + slack),
    ),
  );
}
