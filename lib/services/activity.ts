import { type ActivityLine, activity } from "@/lib/db/activity";
import { catalog } from "@/lib/db/catalog";
import { company } from "@/lib/db/company";
import { instruments } from "@/lib/db/instruments";
import { members } from "@/lib/db/members";
import { weatherFiles } from "@/lib/db/weather-files";
import { asId, isUuid, type JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { idsIn, type Names, type TrailChange, trailChanges } from "@/lib/domain/trail";

const PAGE = 50;

export type TrailLine = {
  readonly seq: string;
  readonly at: string;
  readonly who: string;
  readonly what: string;
  /** Whom or what it was done to, when the entry points at something with a name. */
  readonly subject: string | null;
  readonly job: ActivityLine["job"];
  readonly changes: readonly TrailChange[];
  readonly reason: string | null;
};

export type ActivityView = {
  readonly lines: readonly TrailLine[];
  /** Where the older entries begin; `null` when there are none. */
  readonly olderThan: string | null;
  readonly timeZone: string;
};

/** One page of the company's trail or of one job's, newest first. An address that is no number begins at the newest. */
export async function activityView(
  scope: TenantScope,
  before: string | undefined,
  jobId?: JobId,
): Promise<ActivityView> {
  const beforeSeq = before !== undefined && /^\d{1,18}$/.test(before) ? before : undefined;
  const [found, { timeZone }] = await Promise.all([
    activity(scope).list({
      take: PAGE + 1,
      ...(beforeSeq ? { beforeSeq } : {}),
      ...(jobId ? { jobId } : {}),
    }),
    company(scope).get(),
  ]);
  const page = found.slice(0, PAGE);
  const names = await namesFor(scope, page);
  return {
    lines: page.map((line) => ({
      seq: line.seq,
      at: line.at,
      who: line.actorName,
      what: line.action,
      subject: (line.entityId && names.get(line.entityId)) || null,
      job: line.job,
      changes: trailChanges(line, names),
      reason: line.reason,
    })),
    olderThan: found.length > PAGE ? (page.at(-1)?.seq ?? null) : null,
    timeZone,
  };
}

/** Names of what the entries point at. Older versions of equipment are looked up one by one: they are few. */
async function namesFor(scope: TenantScope, lines: readonly ActivityLine[]): Promise<Names> {
  const [people, models, controls, tools, weather] = await Promise.all([
    members(scope).list(),
    catalog(scope).listEquipment(),
    catalog(scope).listControls("all"),
    instruments(scope).list("all"),
    weatherFiles(scope).list(),
  ]);
  const names = new Map<string, string>([
    ...people.map(({ userId, name }) => [userId, name] as const),
    ...models.map((model) => [model.id, nameOf(model)] as const),
    ...controls.map((model) => [model.id, nameOf(model)] as const),
    ...tools.map(({ id, name }) => [id, name] as const),
    ...weather.map(({ id, name }) => [id, name] as const),
  ]);
  const missing = new Set(
    lines
      .filter((line) => line.action.startsWith("Equipment"))
      .flatMap(idsIn)
      .filter((id) => isUuid(id) && !names.has(id.toLowerCase())),
  );
  for (const id of missing) {
    const model = await catalog(scope).findEquipment(asId<"equipment model">(id));
    if (model) names.set(model.id, `${nameOf(model)}, version ${model.version}`);
  }
  return names;
}

function nameOf({ maker, name }: { readonly maker: string; readonly name: string }): string {
  return `${maker} ${name}`;
}
