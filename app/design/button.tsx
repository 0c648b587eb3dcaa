import Link from "next/link";
import type { ComponentProps } from "react";
import styles from "./button.module.css";

/** One primary step a screen; quiet for what else can be done; danger for what cannot be undone. */
export type ButtonVariant = "primary" | "secondary" | "quiet" | "danger";

export function Button({
  variant = "primary",
  isWide = false,
  type = "button",
  className,
  ...rest
}: ComponentProps<"button"> & { variant?: ButtonVariant; isWide?: boolean }) {
  return <button type={type} className={classOf({ variant, isWide, className })} {...rest} />;
}

/** Looks like a button, goes somewhere. */
export function LinkButton({
  variant = "primary",
  isWide = false,
  className,
  ...rest
}: ComponentProps<typeof Link> & { variant?: ButtonVariant; isWide?: boolean }) {
  return <Link className={classOf({ variant, isWide, className })} {...rest} />;
}

function classOf({
  variant,
  isWide,
  className,
}: {
  variant: ButtonVariant;
  isWide: boolean;
  className?: string;
}): string {
  return [styles.button, styles[variant], isWide ? styles.wide : "", className ?? ""].filter(Boolean).join(" ");
}
