"use client";

import { useSyncExternalStore } from "react";
import styles from "./site-header.module.css";

const THEMES = ["system", "light", "dark"] as const;
type Theme = (typeof THEMES)[number];
const LABELS: Readonly<Record<Theme, string>> = { system: "Auto", light: "Light", dark: "Dark" };

/** Light, dark, or as the system says. The choice stays on this device (see public/theme.js). */
export function ThemeSwitch() {
  const theme = useSyncExternalStore(subscribe, readTheme, () => "system" as const);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would want a visible legend for three short buttons
    <div className={styles.theme} role="group" aria-label="Colors of the screen">
      {THEMES.map((option) => (
        <button key={option} type="button" aria-pressed={theme === option} onClick={() => chooseTheme(option)}>
          {LABELS[option]}
        </button>
      ))}
    </div>
  );
}

function readTheme(): Theme {
  const chosen = document.documentElement.dataset.theme;
  return chosen === "light" || chosen === "dark" ? chosen : "system";
}

function subscribe(onChange: () => void): () => void {
  const observer = new MutationObserver(onChange);
  observer.observe(document.documentElement, { attributeFilter: ["data-theme"] });
  return () => observer.disconnect();
}

function chooseTheme(theme: Theme): void {
  if (theme === "system") delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = theme;
  try {
    if (theme === "system") localStorage.removeItem("theme");
    else localStorage.setItem("theme", theme);
  } catch {
    // Storage may be closed; the choice then lasts until the page is left.
  }
}
