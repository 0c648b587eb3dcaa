import type { Box } from "../boxes.ts";
import { coordinate as c, isCompact, type PlainShape } from "../scene.ts";
import type { HouseFrame } from "./house-frame.ts";
import type { HouseSectionInput } from "./house-section-input.ts";

const DEFAULT_ROOMS = 3;

interface House {
  input: HouseSectionInput;
  frame: HouseFrame;
}

/** The rooms of a storey as boxes; three when nobody has named them. */
function roomsOf({ input, frame }: House): Box[][] {
  return frame.storeys.map((storey, index) => {
    const count = Math.max(1, input.rooms?.[index]?.length ?? DEFAULT_ROOMS);
    const width = storey.width / count;
    return Array.from({ length: count }, (_, room) => ({
      x: storey.x + room * width,
      y: storey.y,
      width,
      height: storey.height,
    }));
  });
}

/** Walls between rooms. */
export function partitionsOf(house: House): Box[] {
  return roomsOf(house).flatMap((rooms) =>
    rooms.slice(1).map(({ x, y, height }) => ({ x: x - 1, y, width: 2, height })),
  );
}

/** A window in each outer room that is wide enough for one. */
export function windowsOf(house: House): Box[] {
  const size = isCompact(house.frame) ? { width: 20, height: 24 } : { width: 34, height: 36 };
  return roomsOf(house).flatMap((rooms) =>
    rooms.flatMap((room, index): Box[] => {
      const isOuter = index === 0 || index === rooms.length - 1;
      if (!isOuter || room.width < size.width * 2.2) return [];
      const across = index === 0 ? 0.34 : 0.66;
      return [{ x: room.x + room.width * across - size.width / 2, y: room.y + room.height * 0.4, ...size }];
    }),
  );
}

/** What is seen behind the cut: thin lines. */
export function drawRooms(house: House): PlainShape[] {
  const walls = partitionsOf(house).map((wall): PlainShape => {
    const x = c(wall.x + 1);
    return { kind: "path", d: `M${x} ${c(wall.y)}L${x} ${c(wall.y + wall.height)}`, stroke: "ink", strokeWidth: 1.1 };
  });
  const windows = windowsOf(house).flatMap((pane): PlainShape[] => {
    const bars = `M${c(pane.x + pane.width / 2)} ${c(pane.y)}l0 ${pane.height}M${c(pane.x)} ${c(pane.y + pane.height * 0.45)}l${pane.width} 0`;
    return [
      { kind: "rect", ...pane, stroke: "hairline", strokeWidth: 1.3 },
      { kind: "path", d: bars, stroke: "hairline", strokeWidth: 1 },
    ];
  });
  return [...walls, ...windows];
}
