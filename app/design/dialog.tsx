"use client";

import type { ReactNode } from "react";
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import { Button } from "./button.tsx";
import styles from "./overlay.module.css";

/** A question that has to be answered before anything else. For everything that can wait, use the page. */
export function Dialog({
  title,
  children,
  isOpen,
  onClose,
  confirmLabel,
  onConfirm,
  cancelLabel = "Cancel",
  isDangerous = false,
}: {
  title: string;
  children: ReactNode;
  isOpen: boolean;
  onClose: () => void;
  confirmLabel: string;
  onConfirm: () => void;
  cancelLabel?: string;
  isDangerous?: boolean;
}) {
  return (
    <ModalOverlay
      isOpen={isOpen}
      onOpenChange={(open) => {
        if (!open) onClose();
      }}
      isDismissable
      className={styles.veil}
    >
      <Modal className={styles.modal}>
        <AriaDialog className={styles.dialog} role={isDangerous ? "alertdialog" : "dialog"}>
          <Heading slot="title">{title}</Heading>
          {children}
          <div className={styles.actions}>
            <Button variant={isDangerous ? "danger" : "primary"} onClick={onConfirm}>
              {confirmLabel}
            </Button>
            <Button variant="quiet" onClick={onClose}>
              {cancelLabel}
            </Button>
          </div>
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}
