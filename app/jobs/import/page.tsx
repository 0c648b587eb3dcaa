import type { Metadata } from "next";
import styles from "../jobs.module.css";
import { ImportForm } from "./import-form.tsx";

export const metadata: Metadata = { title: "Open a job file" };

export default function ImportPage() {
  return (
    <div className={`${styles.page} ${styles.narrow}`}>
      <h1>Which file holds the job?</h1>
      <p>
        One JSON file is one job. The file is checked first; if something in it cannot be used, you see where and what
        to do, and nothing is kept.
      </p>
      <ImportForm />
    </div>
  );
}
