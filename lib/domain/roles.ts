/** What a person is in one company. */
export const ROLES = ["owner", "office", "tech"] as const;
export type Role = (typeof ROLES)[number];

export const ROLE_NAMES: Readonly<Record<Role, string>> = {
  owner: "Owner",
  office: "Office manager",
  tech: "Field tech",
};

/**
 * The one table that decides who may do what. `all`: every job of the company;
 * `assigned`: only jobs assigned to this person. The server enforces it; screens read it to hide
 * what cannot be done.
 */
const MAY = {
  "job.read": { owner: "all", office: "all", tech: "assigned" },
  "job.create": { owner: "all", office: "all" },
  "job.assign": { owner: "all", office: "all" },
  "design.edit": { owner: "all", office: "all" },
  "design.sign": { owner: "all", office: "all" },
  "startup.fill": { owner: "all", office: "all", tech: "assigned" },
  "startup.sign": { owner: "all", tech: "assigned" },
  "review.edit": { owner: "all", office: "all" },
  "review.sign": { owner: "all", office: "all" },
  "question.ask": { owner: "all", office: "all" },
  "late.decide": { owner: "all", office: "all" },
  "record.reopen": { owner: "all", office: "all" },
  "log.upload": { owner: "all", office: "all", tech: "assigned" },
  "attachment.add": { owner: "all", office: "all", tech: "assigned" },
  "packet.make": { owner: "all", office: "all" },
  "callback.edit": { owner: "all", office: "all" },
  "catalog.read": { owner: "all", office: "all", tech: "all" },
  "catalog.edit": { owner: "all", office: "all" },
  "rules.read": { owner: "all", office: "all" },
  "rules.edit": { owner: "all" },
  "across-jobs.read": { owner: "all" },
  "members.manage": { owner: "all" },
  "brand.edit": { owner: "all" },
  "activity.read": { owner: "all" },
  "work.manage": { owner: "all" },
  "tokens.manage": { owner: "all" },
  "company.export": { owner: "all" },
  "company.delete": { owner: "all" },
} as const satisfies Readonly<Record<string, Readonly<Partial<Record<Role, Reach>>>>>;

/** Which jobs a permission reaches. */
export type Reach = "all" | "assigned";
export type Permission = keyof typeof MAY;

export const PERMISSIONS = Object.keys(MAY) as readonly Permission[];

/** How far a role's permission reaches, or `null` when the role may not. */
export function reachOf(role: Role, permission: Permission): Reach | null {
  const row: Readonly<Partial<Record<Role, Reach>>> = MAY[permission];
  return row[role] ?? null;
}

/** True when the role has the permission for at least some jobs. */
export function may(role: Role, permission: Permission): boolean {
  return reachOf(role, permission) !== null;
}
