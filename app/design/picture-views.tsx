"use client";

import { type ReactNode, useState } from "react";
import styles from "./picture.module.css";

/** Several drawings of one thing, such as today and after sealing, one at a time. In print all of them are shown. */
export function PictureViews({
  label,
  views,
}: {
  label: string;
  views: readonly { id: string; label: string; picture: ReactNode }[];
}) {
  const [shownId, setShownId] = useState(views[0]?.id);
  return (
    <div>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would want a visible legend for two short buttons */}
      <div className={styles.views} role="group" aria-label={label}>
        {views.map((view) => (
          <button key={view.id} type="button" aria-pressed={view.id === shownId} onClick={() => setShownId(view.id)}>
            {view.label}
          </button>
        ))}
      </div>
      {views.map((view) => (
        <div key={view.id} className={styles.view} hidden={view.id !== shownId}>
          {view.picture}
        </div>
      ))}
    </div>
  );
}
