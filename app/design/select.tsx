"use client";

import {
  Select as AriaSelect,
  Button,
  FieldError,
  type Key,
  Label,
  ListBox,
  ListBoxItem,
  Popover,
  SelectValue,
  Text,
} from "react-aria-components";
import styles from "./field.module.css";

export interface SelectOption {
  id: string;
  label: string;
}

/** One answer out of many. For up to about five, ChoiceCards is quicker to read and to hit. */
export function Select({
  label,
  hint,
  error,
  name,
  options,
  placeholder = "Choose one",
  selectedId,
  defaultSelectedId,
  onSelect,
}: {
  label: string;
  hint?: string;
  error?: string;
  name?: string;
  options: readonly SelectOption[];
  placeholder?: string;
  selectedId?: string | null;
  defaultSelectedId?: string;
  onSelect?: (id: string) => void;
}) {
  return (
    <AriaSelect
      className={error ? `${styles.field} ${styles.wrong}` : styles.field}
      name={name}
      placeholder={placeholder}
      isInvalid={error !== undefined}
      {...(selectedId !== undefined ? { value: selectedId } : {})}
      {...(defaultSelectedId !== undefined ? { defaultValue: defaultSelectedId } : {})}
      onChange={(key: Key | null) => {
        if (key !== null) onSelect?.(String(key));
      }}
    >
      <Label className={styles.label}>{label}</Label>
      {hint ? (
        <Text slot="description" className={styles.hint}>
          {hint}
        </Text>
      ) : null}
      <FieldError className={styles.error}>
        <span className={styles.errorSign} aria-hidden="true">
          !
        </span>
        <span>{error}</span>
      </FieldError>
      <Button className={styles.selectButton}>
        <SelectValue />
        <svg viewBox="0 0 14 9" aria-hidden="true">
          <path d="M1.5 1.5l5.5 5.5l5.5 -5.5" fill="none" stroke="currentColor" strokeWidth="2" />
        </svg>
      </Button>
      <Popover offset={4}>
        <ListBox className={styles.list}>
          {options.map((option) => (
            <ListBoxItem key={option.id} id={option.id} textValue={option.label} className={styles.option}>
              {option.label}
            </ListBoxItem>
          ))}
        </ListBox>
      </Popover>
    </AriaSelect>
  );
}
