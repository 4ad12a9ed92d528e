"use client";

import { useLayoutEffect } from "react";
import { COMPANY_HEADER, PERSON_HEADER } from "@/lib/domain/shown-for";

type Owner = { readonly companyId: string; readonly personId: string };

let owner: Owner | null = null;

/**
 * Says with everything this tab sends whose page it is. The chosen company is a cookie, which all tabs share:
 * without this, what is typed into a form of one company went to the company another tab has chosen since.
 */
export function TabOwner({ companyId, personId }: Owner) {
  useLayoutEffect(() => {
    owner = { companyId, personId };
    return () => {
      owner = null;
    };
  }, [companyId, personId]);
  return null;
}

/** The framework sends actions and asks for pages by the browser's own `fetch`; there is no other place to add to them. */
if (typeof window !== "undefined") {
  const send = window.fetch.bind(window);
  window.fetch = (input, init) =>
    owner === null || input instanceof Request || !isOurs(input)
      ? send(input, init)
      : send(input, { ...init, headers: withOwner(owner, input, new Headers(init?.headers)) });
}

/** The same for a request that is no `fetch`. */
export function headersOfTab(path: string): Record<string, string> {
  return owner === null ? {} : withOwner(owner, path, new Headers());
}

const isOurs = (input: string | URL) =>
  new URL(input, window.location.href).origin === window.location.origin;

function withOwner(
  { companyId, personId }: Owner,
  input: string | URL,
  headers: Headers,
): Record<string, string> {
  if (!headers.has(COMPANY_HEADER)) headers.set(COMPANY_HEADER, companyId);
  // A page asked for is shown to whoever is signed in now; what is written is refused to anybody but its writer.
  const writes =
    headers.has("next-action") || new URL(input, window.location.href).pathname.startsWith("/api/");
  if (writes && !headers.has(PERSON_HEADER)) headers.set(PERSON_HEADER, personId);
  return Object.fromEntries(headers);
}
