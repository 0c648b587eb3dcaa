"use client";

import type { ReactNode } from "react";
import { Button, Dialog, DialogTrigger, Popover } from "react-aria-components";
import styles from "./overlay.module.css";

/** A trade term with its meaning behind it: pressed, it explains itself in place. */
export function Term({ children, meaning }: { children: string; meaning: ReactNode }) {
  return (
    <DialogTrigger>
      <Button className={styles.term} aria-label={`${children}: what it means`}>
        {children}
      </Button>
      <Popover className={styles.popover} offset={6}>
        <Dialog className={styles.meaning} aria-label={children}>
          <strong>{children}</strong>
          <div>{meaning}</div>
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}
