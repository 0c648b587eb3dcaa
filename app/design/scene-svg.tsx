import { type ReactNode, useId } from "react";
import { SceneMark } from "#lib/documents/html/scene-mark.tsx";
import type { ItemShape, Scene, Shape } from "#lib/pictures/scene.ts";
import styles from "./scene-svg.module.css";

/** Where a click on one thing of the picture leads; without it the picture is one image. */
export type ItemHref = (itemId: string) => string | undefined;

/** Draws a scene on the screen. Colors come from the tokens, so light, dark and print need no second drawing. */
export function SceneSvg({ scene, itemHref, className }: { scene: Scene; itemHref?: ItemHref; className?: string }) {
  const titleId = useId();
  return (
    <svg
      className={className ? `${styles.scene} ${className}` : styles.scene}
      viewBox={`0 0 ${scene.width} ${scene.height}`}
      role={itemHref ? "group" : "img"}
      aria-labelledby={titleId}
    >
      <title id={titleId}>{`${scene.title}. ${scene.finding}`}</title>
      {scene.shapes.map((shape, index) => draw({ shape, key: index, itemHref }))}
    </svg>
  );
}

/** The order of the shapes is fixed by the scene, so a shape's place in it is its key. */
function draw({ shape, key, itemHref }: { shape: Shape; key: number; itemHref?: ItemHref }): ReactNode {
  if (shape.kind !== "item") return <SceneMark key={key} shape={shape} monoClass={styles.mono} />;
  return <Item key={shape.id} item={shape} href={itemHref?.(shape.id)} />;
}

function Item({ item, href }: { item: ItemShape; href: string | undefined }) {
  const marks = item.shapes.map((shape, index) => draw({ shape, key: index }));
  if (href === undefined) return <g data-item={item.id}>{marks}</g>;
  return (
    <a href={href} aria-label={item.label} className={styles.item} data-item={item.id}>
      <title>{item.label}</title>
      {marks}
      <HitArea item={item} />
    </a>
  );
}

/** A small disc is as easy to hit as a large one. */
const LEAST_HIT_RADIUS = 16;

function HitArea({ item }: { item: ItemShape }) {
  const circles = item.shapes.filter((shape) => shape.kind === "circle");
  const largest = circles.sort((a, b) => b.r - a.r)[0];
  if (!largest || largest.r >= LEAST_HIT_RADIUS) return null;
  return <circle cx={largest.cx} cy={largest.cy} r={LEAST_HIT_RADIUS} fill="none" pointerEvents="all" />;
}
