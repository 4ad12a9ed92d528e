import type { Role } from "./roles";

/** Mail the product sends by itself, and to which roles. Everybody may switch a kind off for themselves. */
export const MAIL_KINDS = {
  complaints: {
    label: "Complaints: when one comes in, is overdue, or is opened again by a log",
    roles: ["owner", "office"],
  },
  month: { label: "The month: the owner’s digest as a PDF, on the first of the next", roles: ["owner"] },
  programs: { label: "Programs: when a webhook was switched off because nothing arrived", roles: ["owner"] },
} as const satisfies Readonly<Record<string, { readonly label: string; readonly roles: readonly Role[] }>>;

export type MailKind = keyof typeof MAIL_KINDS;
export const MAIL_KIND_KEYS = Object.keys(MAIL_KINDS) as readonly MailKind[];

/** The kinds a role is sent. */
export function mailFor(role: Role): readonly MailKind[] {
  return MAIL_KIND_KEYS.filter((kind) => (MAIL_KINDS[kind].roles as readonly Role[]).includes(role));
}
