import type { HoseDrawing } from "#lib/setup/hose-drawing.ts";
import { coordinate as c, type PlainShape } from "../scene.ts";
import type { HoseFrame } from "./hose-frame.ts";

const CUT_LINE = 2.6;

/** The invented house, cut open: roof, rooms, what is below the floor, garage, and the door that stands open. */
export function drawCutHouse({ areas, nodes, channels }: HoseDrawing, frame: HoseFrame): PlainShape[] {
  const boxOf = (id: HoseDrawing["areas"][number]["id"]) => {
    const area = areas.find((each) => each.id === id)!;
    const [left, top] = [frame.x(area.x), frame.y(area.y)];
    const right = frame.x(area.x + area.width);
    const bottom = Math.min(frame.y(area.y + area.height), frame.houseBottom);
    return { left, top, right, bottom, x: left, y: top, width: right - left, height: bottom - top };
  };
  const [attic, house, under, garage] = [boxOf("attic"), boxOf("house"), boxOf("under"), boxOf("garage")];
  const eaves = frame.x(4) - frame.x(0);
  const ridge = { left: frame.x(29), right: frame.x(71) };
  const grade = house.bottom + 3;
  const roof = `M${c(attic.left - eaves)} ${c(attic.bottom)}L${c(ridge.left)} ${c(attic.top)}L${c(ridge.right)} ${c(attic.top)}L${c(attic.right + eaves)} ${c(attic.bottom)}`;
  const walls = `M${c(house.left)} ${c(house.top)}L${c(house.left)} ${c(under.bottom)}L${c(house.right)} ${c(under.bottom)}L${c(house.right)} ${c(house.top)}`;
  const floors = `M${c(house.left)} ${c(house.top)}L${c(house.right)} ${c(house.top)}M${c(house.left)} ${c(house.bottom)}L${c(house.right)} ${c(house.bottom)}`;
  const shapes: PlainShape[] = [
    { kind: "rect", x: 0, y: 0, width: frame.width, height: frame.houseBottom, fill: "outside-tint" },
    { kind: "rect", x: 0, y: c(grade), width: frame.width, height: c(frame.houseBottom - grade), fill: "ground" },
    { kind: "path", d: `M0 ${c(grade)}L${frame.width} ${c(grade)}`, stroke: "ink", strokeWidth: 1.2 },
    rect(garage, "card"),
    { kind: "path", d: `${roof}Z`, fill: "attic-air" },
    rect(house, "card"),
    rect(under, "attic-air"),
    { kind: "path", d: roof, stroke: "ink", strokeWidth: CUT_LINE },
    { kind: "path", d: walls, stroke: "ink", strokeWidth: CUT_LINE },
    { kind: "path", d: floors, stroke: "ink", strokeWidth: 1.6 },
    {
      kind: "path",
      d: `M${c(garage.left)} ${c(garage.top)}L${c(garage.right - 2)} ${c(garage.top)}L${c(garage.right - 2)} ${c(garage.bottom)}`,
      stroke: "ink",
      strokeWidth: 1.6,
    },
  ];
  if (nodes.some(({ part }) => part === "open-door")) shapes.push(...openDoor(frame, house));
  if (channels.some(({ id }) => id === "room")) shapes.push(innerWall(frame, house, frame.y(66.5)));
  if (channels.some(({ id }) => id === "combustion")) {
    shapes.push(innerWall(frame, house, house.bottom), ...appliance(frame, house));
  }
  return shapes;
}

interface Room {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

function rect({ left, top, right, bottom }: Room, fill: "card" | "attic-air"): PlainShape {
  return { kind: "rect", x: c(left), y: c(top), width: c(right - left), height: c(bottom - top), fill };
}

/** A gap in the wall, and the leaf that has swung out of it. */
function openDoor(frame: HoseFrame, { left, bottom }: Room): PlainShape[] {
  const top = frame.y(51);
  const swing = frame.x(7) - frame.x(0);
  return [
    { kind: "path", d: `M${c(left)} ${c(top)}L${c(left)} ${c(bottom)}`, stroke: "card", strokeWidth: CUT_LINE + 2 },
    {
      kind: "path",
      d: `M${c(left)} ${c(top)}L${c(left - swing)} ${c(top + 7)}L${c(left - swing)} ${c(bottom + 2)}L${c(left)} ${c(bottom)}Z`,
      fill: "card",
      stroke: "ink",
      strokeWidth: 1.6,
    },
    { kind: "circle", cx: c(left - swing + 5), cy: c((top + bottom) / 2 + 6), r: 1.8, fill: "ink" },
  ];
}

/** The wall of a room or closet; a shut door leaves a gap at its foot. */
function innerWall(frame: HoseFrame, { top }: Room, foot: number): PlainShape {
  const x = frame.x(33);
  return { kind: "path", d: `M${c(x)} ${c(top)}L${c(x)} ${c(foot)}`, stroke: "ink", strokeWidth: 1.6 };
}

/** A water heater or furnace with its flue. */
function appliance(frame: HoseFrame, { bottom, top }: Room): PlainShape[] {
  const [x, width] = [frame.x(16), frame.x(22) - frame.x(16)];
  const y = frame.y(55);
  const flue = x + width / 2;
  return [
    { kind: "path", d: `M${c(flue)} ${c(y)}L${c(flue)} ${c(top)}`, stroke: "blower", strokeWidth: 6 },
    {
      kind: "rect",
      x: c(x),
      y: c(y),
      width: c(width),
      height: c(bottom - y - 1),
      radius: 3,
      fill: "card",
      stroke: "ink",
      strokeWidth: 1.6,
    },
    {
      kind: "path",
      d: `M${c(flue)} ${c(bottom - 6)}q-7 -6 0 -15q7 9 0 15Z`,
      fill: "regained",
      stroke: "ink",
      strokeWidth: 1,
    },
  ];
}
