"use client";

import Form from "next/form";
import type { ReactNode } from "react";

/** A form that asks again by itself when a choice changes; typed numbers wait for the button. Works without script. */
export function SetupForm({ children, className }: { children: ReactNode; className?: string }) {
  return (
    <Form
      action="/setup"
      scroll={false}
      className={className}
      onChange={(event) => {
        const field = event.target;
        const isTyped = field instanceof HTMLInputElement && field.type === "text";
        if (!isTyped) event.currentTarget.requestSubmit();
      }}
    >
      {children}
    </Form>
  );
}
