import type { ReactNode } from "react";
import type { Scene, Shape } from "#lib/pictures/scene.ts";
import { SceneMark } from "./scene-mark.tsx";

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
  if (shape.kind !== "item") return <SceneMark key={key} shape={shape} monoClass="mono" />;
  return <g key={shape.id}>{shape.shapes.map((mark, index) => draw(mark, index))}</g>;
}
