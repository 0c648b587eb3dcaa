import { textWidth } from "#lib/pictures/measure-text.ts";
import { patternMarks } from "#lib/pictures/pattern-marks.ts";
import type { CircleShape, Ink, Paint, PlainShape, RectShape, TextShape } from "#lib/pictures/scene.ts";

/** One shape of a scene as SVG. Colors are the page's tokens, so light, dark and print need no second drawing. */
export function SceneMark({ shape, monoClass }: { shape: PlainShape; monoClass: string | undefined }) {
  switch (shape.kind) {
    case "path":
      return <path d={shape.d} {...paint(shape)} />;
    case "rect":
      return (
        <>
          <rect x={shape.x} y={shape.y} width={shape.width} height={shape.height} rx={shape.radius} {...paint(shape)} />
          <Pattern shape={shape} />
        </>
      );
    case "circle":
      return (
        <>
          <circle cx={shape.cx} cy={shape.cy} r={shape.r} {...paint(shape)} />
          <Pattern shape={shape} />
        </>
      );
    case "text":
      return <Label shape={shape} monoClass={monoClass} />;
  }
}

/** A letter or two run out of no room, and a single figure would be bent. */
const LEAST_BOUND_LETTERS = 3;

/** Until the page's own font is there another one stands in; its letters keep to the room that was measured. */
function Label({ shape, monoClass }: { shape: TextShape; monoClass: string | undefined }) {
  const isBound = shape.text.length >= LEAST_BOUND_LETTERS;
  return (
    <text
      x={shape.x}
      y={shape.y}
      fontSize={shape.size}
      fill={color(shape.fill)}
      fontWeight={shape.weight}
      textAnchor={shape.anchor}
      className={shape.family === "mono" ? monoClass : undefined}
      {...(isBound ? { textLength: Number(textWidth(shape).toFixed(2)), lengthAdjust: "spacingAndGlyphs" } : {})}
    >
      {shape.text}
    </text>
  );
}

function Pattern({ shape }: { shape: RectShape | CircleShape }) {
  if (!shape.pattern) return null;
  const mark = color(shape.fill === "regained" ? "regained-mark" : "lost-mark");
  const d = patternMarks(shape);
  if (shape.pattern === "dotted") return <path d={d} fill={mark} />;
  return <path d={d} fill="none" stroke={mark} strokeWidth={2} />;
}

function paint({ fill, stroke, strokeWidth, dash, lineCap, opacity }: Paint) {
  return {
    fill: fill ? color(fill) : "none",
    stroke: stroke ? color(stroke) : undefined,
    strokeWidth,
    strokeDasharray: dash?.join(" "),
    strokeLinecap: lineCap,
    opacity,
  };
}

const color = (ink: Ink): string => `var(--${ink})`;
