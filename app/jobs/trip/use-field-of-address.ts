"use client";

import { useEffect } from "react";

/** Opens and focuses the field that the address names, also where it stands in a part that is folded. */
export function useFieldOfAddress(): void {
  useEffect(() => {
    const show = () => {
      const field = document.getElementById(decodeURIComponent(location.hash.slice(1)));
      if (!field) return;
      for (let part = field.closest("details"); part; part = part.parentElement?.closest("details") ?? null) {
        part.open = true;
      }
      field.focus({ preventScroll: true });
      field.scrollIntoView({ block: "center" });
    };
    show();
    addEventListener("hashchange", show);
    return () => removeEventListener("hashchange", show);
  }, []);
}
