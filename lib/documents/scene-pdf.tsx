import { Circle, G, Path, Rect, Svg, Text } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import { PAPER_INKS } from "#lib/pictures/paper-inks.ts";
import { patternMarks } from "#lib/pictures/pattern-marks.ts";
import type { CircleShape, Ink, Paint, PlainShape, RectShape, Scene, Shape } from "#lib/pictures/scene.ts";

/** Names under which the caller has registered the letters of the pictures. */
export interface SceneFonts {
  sans: string;
  mono: string;
}

/** Draws a scene on paper: the same shapes in the same order as on the screen, scaled to the width that is given. */
export function ScenePdf({ scene, widthPoints, fonts }: { scene: Scene; widthPoints: number; fonts: SceneFonts }) {
  const heightPoints = (widthPoints * scene.height) / scene.width;
  return (
    <Svg width={widthPoints} height={heightPoints} viewBox={`0 0 ${scene.width} ${scene.height}`}>
      {scene.shapes.map((shape, index) => draw({ shape, key: index, fonts }))}
    </Svg>
  );
}

/** The order of the shapes is fixed by the scene, so a shape's place in it is its key. */
function draw({ shape, key, fonts }: { shape: Shape; key: number; fonts: SceneFonts }): ReactNode {
  if (shape.kind !== "item") return <PlainMark key={key} shape={shape} fonts={fonts} />;
  return <G key={shape.id}>{shape.shapes.map((mark, index) => draw({ shape: mark, key: index, fonts }))}</G>;
}

function PlainMark({ shape, fonts }: { shape: PlainShape; fonts: SceneFonts }) {
  switch (shape.kind) {
    case "path":
      return <Path d={shape.d} {...paint(shape)} />;
    case "rect":
      return (
        <G>
          <Rect
            x={shape.x}
            y={shape.y}
            width={shape.width}
            height={shape.height}
            rx={shape.radius}
            ry={shape.radius}
            {...paint(shape)}
          />
          <Marks shape={shape} />
        </G>
      );
    case "circle":
      return (
        <G>
          <Circle cx={shape.cx} cy={shape.cy} r={shape.r} {...paint(shape)} />
          <Marks shape={shape} />
        </G>
      );
    case "text":
      return (
        <Text
          x={shape.x}
          y={shape.y}
          fill={color(shape.fill)}
          textAnchor={shape.anchor ?? "start"}
          style={{
            fontSize: shape.size,
            fontFamily: shape.family === "mono" ? fonts.mono : fonts.sans,
            fontWeight: shape.weight ?? 400,
          }}
        >
          {shape.text}
        </Text>
      );
  }
}

function Marks({ shape }: { shape: RectShape | CircleShape }) {
  const d = patternMarks(shape);
  if (!d) return null;
  const mark = color(shape.fill === "regained" ? "regained-mark" : "lost-mark");
  return shape.pattern === "dotted" ? (
    <Path d={d} fill={mark} />
  ) : (
    <Path d={d} fill="none" stroke={mark} strokeWidth={2} />
  );
}

function paint({ fill, stroke, strokeWidth, dash, lineCap, opacity }: Paint) {
  return {
    fill: fill ? color(fill) : "none",
    ...(stroke ? { stroke: color(stroke), strokeWidth: strokeWidth ?? 1 } : {}),
    ...(dash ? { strokeDasharray: dash.join(" ") } : {}),
    ...(lineCap ? { strokeLinecap: lineCap } : {}),
    ...(opacity !== undefined ? { opacity } : {}),
  };
}

function color(ink: Ink): string {
  return PAPER_INKS[ink];
}
