import styles from "./look.module.css";

const SURFACES = [
  { token: "paper", label: "paper" },
  { token: "desk", label: "desk" },
  { token: "card", label: "card" },
  { token: "accent", label: "can be pressed" },
  { token: "ink", label: "ink" },
  { token: "soft", label: "soft ink" },
  { token: "hairline", label: "hairline" },
] as const;

const MEANINGS = [
  { token: "kept", label: "Kept", pattern: "plain" },
  { token: "lost", label: "Lost", pattern: "hatched" },
  { token: "regained", label: "Partly regained", pattern: "dotted" },
  { token: "outside", label: "Outside air", pattern: "slate" },
] as const;

/** The colors in both themes side by side, whatever theme the page is in. */
export function Palette() {
  return (
    <div className={styles.themes}>
      {(["light", "dark"] as const).map((theme) => (
        <div key={theme} data-theme={theme} className={styles.theme}>
          <h3>{theme === "light" ? "Light" : "Dark"}</h3>
          <ul className={styles.swatches}>
            {SURFACES.map(({ token, label }) => (
              <li key={token}>
                <span className={styles.swatch} style={{ background: `var(--${token})` }} />
                {label}
              </li>
            ))}
          </ul>
          <ul className={styles.meanings}>
            {MEANINGS.map(({ token, label, pattern }) => (
              <li
                key={token}
                className={styles[pattern]}
                style={{ backgroundColor: `var(--${token})`, color: `var(--on-${token})` }}
              >
                <span style={{ background: `var(--${token})` }}>
                  {label}, {pattern}
                </span>
              </li>
            ))}
          </ul>
        </div>
      ))}
    </div>
  );
}
