import type { ComponentProps, ReactNode } from "react";
import { cx } from "./cx";

export type ButtonVariant = "primary" | "secondary" | "quiet" | "danger";

export type ButtonProps = ComponentProps<"button"> & {
  readonly variant?: ButtonVariant;
  /** While true the button says `busyText`, cannot be pressed again and keeps the focus. */
  readonly busy?: boolean;
  readonly busyText?: string;
  /** A small drawing before the words. */
  readonly icon?: ReactNode;
  /** Takes the full width of its place. */
  readonly wide?: boolean;
};

export function Button({
  variant = "secondary",
  busy = false,
  busyText,
  icon,
  wide = false,
  className,
  children,
  type = "button",
  onClick,
  ...rest
}: ButtonProps) {
  return (
    <button
      {...rest}
      // A button that is no submit button and hears nothing: pressing it while busy does nothing.
      type={busy ? "button" : type}
      className={cx("button", `button-${variant}`, wide && "w-full", className)}
      aria-busy={busy || undefined}
      aria-disabled={busy || undefined}
      onClick={busy ? undefined : onClick}
    >
      {busy ? null : icon}
      {busy && busyText !== undefined ? busyText : children}
    </button>
  );
}
