import type { ReactNode } from "react";
import { patternMarks } from "#lib/pictures/pattern-marks.ts";
import type { CircleShape, Ink, Paint, PlainShape, RectShape, Scene, Shape } from "#lib/pictures/scene.ts";

/** Draws a scene into a page of its own, which knows nothing of the app's style sheets. */
export function SceneHtml({ scene, className }: { scene: Scene; className: string }) {
  return (
    <svg
      className={className}
      viewBox={`0 0 ${scene.width} ${scene.height}`}
      role="img"
      aria-label={`${scene.title}. ${scene.finding}`}
    >
      {scene.shapes.map((shape, index) => draw(shape, index))}
    </svg>
  );
}

function draw(shape: Shape, key: number): ReactNode {
  if (shape.kind !== "item") return <Mark key={key} shape={shape} />;
  return <g key={shape.id}>{shape.shapes.map((mark, index) => draw(mark, index))}</g>;
}

function Mark({ shape }: { shape: PlainShape }) {
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
      return (
        <text
          x={shape.x}
          y={shape.y}
          fontSize={shape.size}
          fill={color(shape.fill)}
          fontWeight={shape.weight}
          textAnchor={shape.anchor}
          className={shape.family === "mono" ? "mono" : undefined}
        >
          {shape.text}
        </text>
      );
  }
}

function Pattern({ shape }: { shape: RectShape | CircleShape }) {
  if (!shape.pattern) return null;
  const mark = color(shape.fill === "regained" ? "regained-mark" : "lost-mark");
  const d = patternMarks(shape);
  return shape.pattern === "dotted" ? (
    <path d={d} fill={mark} />
  ) : (
    <path d={d} fill="none" stroke={mark} strokeWidth={2} />
  );
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
