import { may, type Permission, type Role } from "@/lib/domain/roles";

export type NavItem = {
  readonly href: string;
  readonly label: string;
  readonly icon: "today" | "jobs" | "startups" | "callbacks" | "across" | "catalog" | "rules" | "company";
};

const ITEMS: readonly (NavItem & { readonly permission: Permission })[] = [
  { href: "/today", label: "Today", icon: "today", permission: "startup.fill" },
  { href: "/jobs", label: "Jobs", icon: "jobs", permission: "job.read" },
  { href: "/startups", label: "Startups", icon: "startups", permission: "job.assign" },
  { href: "/callbacks", label: "Callbacks", icon: "callbacks", permission: "callback.edit" },
  { href: "/across-jobs", label: "Across jobs", icon: "across", permission: "across-jobs.read" },
  { href: "/catalog", label: "Catalog", icon: "catalog", permission: "catalog.read" },
  { href: "/rules", label: "Rules", icon: "rules", permission: "rules.read" },
  { href: "/company", label: "Company", icon: "company", permission: "members.manage" },
];

/** The places a role may go to. */
export function navFor(role: Role): readonly NavItem[] {
  return ITEMS.filter((item) => may(role, item.permission)).map(({ href, label, icon }) => ({
    href,
    label,
    icon,
  }));
}
