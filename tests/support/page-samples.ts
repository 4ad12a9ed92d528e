import { PERMISSIONS, type Permission } from "@/lib/domain/roles";

/** What a page's address names. */
export type PageIds = {
  readonly jobId: string;
  readonly modelId: string;
  readonly secret: string;
  readonly packetSecret: string;
};

export type PageSample = {
  /** The permission the page asks for; null when it is for people who are not signed in. */
  readonly permission: Permission | null;
  /** The addresses of the page for these ids. */
  readonly addresses: (ids: PageIds) => readonly string[];
  /** Where the page leads instead of showing itself. */
  readonly leadsTo?: RegExp;
};

const STAGE_SLUGS = [
  "load-summary",
  "equipment-selection",
  "airflow-setup",
  "control-setup",
  "startup-record",
  "humidity-review",
];

/** Every page of the application, by its address as the files spell it. */
export const PAGE_SAMPLES: Readonly<Record<string, PageSample>> = {
  "/": { permission: "job.read", addresses: () => ["/"], leadsTo: /\/(jobs|today)$/ },
  "/sign-in": { permission: null, addresses: () => ["/sign-in"] },
  "/join/[secret]": { permission: null, addresses: ({ secret }) => [`/join/${secret}`] },
  "/packet/[secret]": { permission: null, addresses: ({ packetSecret }) => [`/packet/${packetSecret}`] },
  "/api-reference": { permission: null, addresses: () => ["/api-reference"] },
  "/account": { permission: "job.read", addresses: () => ["/account"] },
  "/jobs": { permission: "job.read", addresses: () => ["/jobs"] },
  "/jobs/week": { permission: "job.assign", addresses: () => ["/jobs/week", "/jobs/week?from=2026-07-06"] },
  "/jobs/new": { permission: "job.create", addresses: () => ["/jobs/new"] },
  "/jobs/[jobId]": { permission: "job.read", addresses: ({ jobId }) => [`/jobs/${jobId}`] },
  "/jobs/[jobId]/[stage]": {
    permission: "job.read",
    addresses: ({ jobId }) => STAGE_SLUGS.map((slug) => `/jobs/${jobId}/${slug}`),
  },
  "/jobs/[jobId]/options": { permission: "job.read", addresses: ({ jobId }) => [`/jobs/${jobId}/options`] },
  "/jobs/[jobId]/options/search": {
    permission: "job.read",
    addresses: ({ jobId }) => [`/jobs/${jobId}/options/search`],
  },
  "/forecast-model": { permission: "job.read", addresses: () => ["/forecast-model"] },
  "/jobs/[jobId]/weather": { permission: "job.read", addresses: ({ jobId }) => [`/jobs/${jobId}/weather`] },
  "/jobs/[jobId]/packet": { permission: "packet.make", addresses: ({ jobId }) => [`/jobs/${jobId}/packet`] },
  "/jobs/[jobId]/callbacks": {
    permission: "callback.edit",
    addresses: ({ jobId }) => [`/jobs/${jobId}/callbacks`],
  },
  "/jobs/[jobId]/field": { permission: "question.ask", addresses: ({ jobId }) => [`/jobs/${jobId}/field`] },
  "/startups": { permission: "job.assign", addresses: () => ["/startups"] },
  "/jobs/[jobId]/trail": { permission: "job.read", addresses: ({ jobId }) => [`/jobs/${jobId}/trail`] },
  "/today": { permission: "startup.fill", addresses: () => ["/today"] },
  "/catalog": { permission: "catalog.read", addresses: () => ["/catalog"] },
  "/catalog/[modelId]": {
    permission: "catalog.read",
    addresses: ({ modelId }) => [`/catalog/${modelId}`],
  },
  "/catalog/new": { permission: "catalog.edit", addresses: () => ["/catalog/new"] },
  "/catalog/[modelId]/edit": {
    permission: "catalog.edit",
    addresses: ({ modelId }) => [`/catalog/${modelId}/edit`],
  },
  "/catalog/[modelId]/import": {
    permission: "catalog.edit",
    addresses: ({ modelId }) => [`/catalog/${modelId}/import`],
  },
  "/catalog/retired": { permission: "catalog.edit", addresses: () => ["/catalog/retired"] },
  "/catalog/thermostats/[controlId]": {
    permission: "catalog.edit",
    addresses: () => ["/catalog/thermostats/new"],
  },
  "/catalog/instruments/[instrumentId]": {
    permission: "catalog.edit",
    addresses: () => ["/catalog/instruments/new"],
  },
  "/callbacks": { permission: "callback.edit", addresses: () => ["/callbacks"] },
  "/across-jobs": {
    permission: "across-jobs.read",
    addresses: () => ["/across-jobs", "/across-jobs?by=techId"],
  },
  "/across-jobs/months": {
    permission: "across-jobs.read",
    addresses: () => ["/across-jobs/months"],
  },
  "/across-jobs/instruments": {
    permission: "across-jobs.read",
    addresses: () => ["/across-jobs/instruments"],
  },
  "/rules": { permission: "rules.read", addresses: () => ["/rules"] },
  "/company": { permission: "brand.edit", addresses: () => ["/company"] },
  "/company/activity": { permission: "activity.read", addresses: () => ["/company/activity"] },
  "/company/tokens": { permission: "tokens.manage", addresses: () => ["/company/tokens"] },
  "/company/webhooks": { permission: "tokens.manage", addresses: () => ["/company/webhooks"] },
  "/company/work": { permission: "work.manage", addresses: () => ["/company/work"] },
  "/company/data": { permission: "company.export", addresses: () => ["/company/data"] },
  "/company/members": { permission: "members.manage", addresses: () => ["/company/members"] },
};

/** The address of a page's file: groups in parentheses are not part of it. */
export function addressOfPage(file: string): string {
  const parts = file
    .split("/")
    .slice(1, -1)
    .filter((part) => !/^\(.*\)$/.test(part));
  return `/${parts.join("/")}`;
}

/** The permission that a page's own code asks for, read from its text. */
export function permissionAsked(source: string): Permission | null {
  const found = /pageScope\("([^"]+)"\)/.exec(source)?.[1];
  return PERMISSIONS.find((one) => one === found) ?? null;
}
