"use client";

import { type ReactNode, useRef } from "react";
import styles from "./display-settings.module.css";
import { ThemeSwitch } from "./theme-switch.tsx";

/** How things are shown on this device: units and colors. Opens on demand; Escape or a look elsewhere closes it. */
export function DisplaySettings({ units }: { units: ReactNode }) {
  const box = useRef<HTMLDetailsElement>(null);
  const close = () => {
    if (box.current) box.current.open = false;
  };
  return (
    <details
      ref={box}
      className={styles.settings}
      onKeyDown={(event) => {
        if (event.key !== "Escape" || !box.current?.open) return;
        close();
        box.current.querySelector("summary")?.focus();
      }}
      onBlur={(event) => {
        if (event.relatedTarget instanceof Node && !event.currentTarget.contains(event.relatedTarget)) close();
      }}
    >
      <summary>Display</summary>
      <div className={styles.panel}>
        <div className={styles.row}>
          <p>Units</p>
          {units}
        </div>
        <div className={styles.row}>
          <p>Colors</p>
          <ThemeSwitch />
        </div>
      </div>
    </details>
  );
}
