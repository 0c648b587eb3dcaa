"use client";

import { useState } from "react";
import { Button } from "#app/design/button.tsx";
import { Dialog } from "#app/design/dialog.tsx";

export function DialogSample() {
  const [isOpen, setIsOpen] = useState(false);
  const close = () => setIsOpen(false);
  return (
    <>
      <Button variant="danger" onClick={() => setIsOpen(true)}>
        Delete this job
      </Button>
      <Dialog
        title="Delete the job at Hartwell Lane?"
        isOpen={isOpen}
        onClose={close}
        confirmLabel="Delete it"
        onConfirm={close}
        cancelLabel="Keep it"
        isDangerous
      >
        <p>Its readings, leaks and photos go with it. Proposals that were sent stay as they were.</p>
      </Dialog>
    </>
  );
}
