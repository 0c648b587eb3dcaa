import type { Metadata } from "next";
import styles from "../jobs.module.css";
import { NewJobForm } from "./new-job-form.tsx";

export const metadata: Metadata = { title: "New job" };

export default function NewJobPage() {
  return (
    <div className={`${styles.page} ${styles.narrow}`}>
      <h1>Which house is it?</h1>
      <p>Two lines and the trip begins. Whatever you do not know can wait, or be left out for good.</p>
      <NewJobForm />
    </div>
  );
}
