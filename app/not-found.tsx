import type { Metadata } from "next";
import { LinkButton } from "./design/button.tsx";
import styles from "./design/page.module.css";

export const metadata: Metadata = { title: "Nothing here" };

/** An address that leads nowhere, or to what this person may not see. */
export default function NotFound() {
  return (
    <div className={styles.page}>
      <h1>There is nothing at this address</h1>
      <p>
        It may be mistyped, an old link, or something that belongs to another organization. What you entered is safe:
        nothing is lost by an address.
      </p>
      <LinkButton href="/jobs">Go to your jobs</LinkButton>
    </div>
  );
}
