"use client";

import { KeyRound, LogOut } from "lucide-react";
import { Button } from "@/components/ui/button";
import { Menu, MenuItem } from "@/components/ui/menu";
import { phoneOwner } from "@/lib/offline/owner";

type Props = { readonly name: string; readonly role: string };

/** Who is signed in, and the way out. */
export function UserMenu({ name, role }: Props) {
  return (
    <Menu
      trigger={
        <Button variant="quiet">
          <span className="text-left">
            <span className="block font-semibold">{name}</span>
            <span className="block text-xs font-normal text-muted">{role}</span>
          </span>
        </Button>
      }
    >
      <MenuItem href="/account" icon={<KeyRound aria-hidden size={16} />}>
        Your account
      </MenuItem>
      <MenuItem onSelect={() => void signOut()} icon={<LogOut aria-hidden size={16} />}>
        Sign out
      </MenuItem>
    </Menu>
  );
}

async function signOut(): Promise<void> {
  const { csrfToken } = await (await fetch("/api/auth/csrf")).json();
  await fetch("/api/auth/signout", {
    method: "POST",
    headers: { "content-type": "application/x-www-form-urlencoded" },
    body: new URLSearchParams({ csrfToken, json: "true" }),
  });
  phoneOwner.set(null);
  window.location.assign("/sign-in");
}
