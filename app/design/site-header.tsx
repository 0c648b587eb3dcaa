import Link from "next/link";
import { UnitSwitch } from "#app/units/unit-switch.tsx";
import { DisplaySettings } from "./display-settings.tsx";
import styles from "./site-header.module.css";
import { Wordmark } from "./wordmark.tsx";

/** The head of every page: a way past it, home, and the choice of light or dark. */
export function SiteHeader() {
  return (
    <>
      <a className={styles.skip} href="#main">
        Skip to the main content
      </a>
      <header className={styles.header}>
        <Link href="/" className={styles.home}>
          <Wordmark />
        </Link>
        <nav className={styles.nav} aria-label="Main">
          <Link href="/jobs">Jobs</Link>
          <Link href="/program">Claims</Link>
          <Link href="/organization">Your firm</Link>
          <Link href="/who">Who acts</Link>
        </nav>
        <DisplaySettings units={<UnitSwitch />} />
      </header>
    </>
  );
}
