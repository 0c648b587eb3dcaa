"use client";

import { useRouter } from "next/navigation";
import { useSyncExternalStore } from "react";
import styles from "#app/design/site-header.module.css";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { readUnitSystem, UNIT_COOKIE } from "./unit-cookie.ts";

const OPTIONS: readonly { system: UnitSystem; label: string }[] = [
  { system: "us", label: "US" },
  { system: "si", label: "SI" },
];
const YEAR_SECONDS = 31_536_000;
const CHANGED = "ductmend:units";

/** US or SI units. Only what is shown changes: what is stored stays in one unit for each quantity. */
export function UnitSwitch() {
  const router = useRouter();
  const chosen = useSyncExternalStore(subscribe, unitsOfThisDevice, () => "us" as const);
  const choose = (system: UnitSystem) => {
    // biome-ignore lint/suspicious/noDocumentCookie: the Cookie Store API is not in every browser yet
    document.cookie = `${UNIT_COOKIE}=${system}; path=/; max-age=${YEAR_SECONDS}; samesite=lax`;
    dispatchEvent(new Event(CHANGED));
    router.refresh();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would want a visible legend for two short buttons
    <div className={styles.theme} role="group" aria-label="Units">
      {OPTIONS.map(({ system, label }) => (
        <button key={system} type="button" aria-pressed={chosen === system} onClick={() => choose(system)}>
          {label}
        </button>
      ))}
    </div>
  );
}

function unitsOfThisDevice(): UnitSystem {
  const entry = document.cookie.split("; ").find((each) => each.startsWith(`${UNIT_COOKIE}=`));
  return readUnitSystem(entry?.slice(UNIT_COOKIE.length + 1));
}

function subscribe(onChange: () => void): () => void {
  addEventListener(CHANGED, onChange);
  return () => removeEventListener(CHANGED, onChange);
}
