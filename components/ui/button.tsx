import Link from "next/link";
import type { ComponentProps, ReactNode } from "react";
import { cx } from "./cx";
import type { ButtonVariant } from "./plain-button";

// Apart from the links, because a page that has none need not carry the router's link.
export { Button, type ButtonProps, type ButtonVariant } from "./plain-button";

export type LinkButtonProps = ComponentProps<typeof Link> & {
  readonly variant?: ButtonVariant;
  readonly icon?: ReactNode;
  readonly wide?: boolean;
};

/** A link that looks like a button: it goes somewhere, a button does something. */
export function LinkButton({
  variant = "secondary",
  icon,
  wide = false,
  className,
  children,
  ...rest
}: LinkButtonProps) {
  return (
    <Link {...rest} className={cx("button", `button-${variant}`, wide && "w-full", className)}>
      {icon}
      {children}
    </Link>
  );
}

/** A link inside text. */
export function TextLink({ className, ...rest }: ComponentProps<typeof Link>) {
  return <Link {...rest} className={cx("text-link", className)} />;
}
