import type { ReactNode } from "react";
import { SignedInShell } from "@/app/signed-in-shell";

export default function Layout({ children }: { readonly children: ReactNode }) {
  return <SignedInShell>{children}</SignedInShell>;
}
