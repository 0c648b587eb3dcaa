"use client";

import { useEffect, useRef } from "react";
import styles from "./notice.module.css";

export interface SummaryError {
  /** The id of the field. */
  fieldId: string;
  /** The same words as beside the field. */
  text: string;
}

/** All that is wrong on a page, on top, in focus, each with the way to its field. */
export function ErrorSummary({
  errors,
  title = "There is a problem",
  takesFocus = true,
}: {
  errors: readonly SummaryError[];
  title?: string;
  takesFocus?: boolean;
}) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (takesFocus && errors.length > 0) box.current?.focus();
  }, [takesFocus, errors]);
  if (errors.length === 0) return null;
  return (
    <div ref={box} className={styles.summary} role="alert" tabIndex={-1}>
      <h2>{title}</h2>
      <ul>
        {errors.map((error) => (
          <li key={`${error.fieldId} ${error.text}`}>
            <a href={`#${error.fieldId}`}>{error.text}</a>
          </li>
        ))}
      </ul>
    </div>
  );
}
