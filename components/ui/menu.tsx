"use client";

import Link from "next/link";
import { DropdownMenu } from "radix-ui";
import type { ReactNode } from "react";
import { cx } from "./cx";

const ITEM =
  "flex min-h-11 w-full cursor-pointer items-center gap-2.5 px-3 text-sm outline-none data-[highlighted]:bg-accent data-[highlighted]:text-accent-text data-[disabled]:cursor-not-allowed data-[disabled]:text-muted";

export type MenuProps = {
  /** The button that opens it: one element that takes a ref, such as `Button`. */
  readonly trigger: ReactNode;
  readonly children: ReactNode;
  readonly align?: "start" | "end";
};

export function Menu({ trigger, children, align = "end" }: MenuProps) {
  return (
    <DropdownMenu.Root>
      <DropdownMenu.Trigger asChild>{trigger}</DropdownMenu.Trigger>
      <DropdownMenu.Portal>
        <DropdownMenu.Content
          align={align}
          sideOffset={4}
          className="z-50 min-w-52 border border-rule-strong bg-sheet py-1"
        >
          {children}
        </DropdownMenu.Content>
      </DropdownMenu.Portal>
    </DropdownMenu.Root>
  );
}

export type MenuItemProps = {
  readonly children: ReactNode;
  readonly icon?: ReactNode;
  readonly disabled?: boolean;
  readonly danger?: boolean;
} & ({ readonly href: string } | { readonly onSelect: () => void });

/** One choice: a place to go, or a thing to do. */
export function MenuItem(props: MenuItemProps) {
  const className = cx(ITEM, props.danger && "text-short");
  if ("href" in props) {
    return (
      <DropdownMenu.Item asChild disabled={props.disabled ?? false} className={className}>
        <Link href={props.href}>
          {props.icon}
          {props.children}
        </Link>
      </DropdownMenu.Item>
    );
  }
  return (
    <DropdownMenu.Item disabled={props.disabled ?? false} className={className} onSelect={props.onSelect}>
      {props.icon}
      {props.children}
    </DropdownMenu.Item>
  );
}
