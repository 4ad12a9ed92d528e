import type { LogSummary } from "@/lib/domain/evaluate";
import { asId, type JobId, type LogImportId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { appendActivity } from "./activity";
import { asDate, asJson } from "./json";
import { DAY_CHANNELS, type LogDay, packed, unpacked } from "./log-day";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

export type NewLogImport = {
  readonly jobId: JobId;
  readonly source: {
    readonly name: string;
    readonly headerFingerprint: string;
    readonly mapping: unknown;
    readonly timeZone: string;
  };
  readonly fileName: string;
  readonly sha256: string;
  readonly sizeBytes: number;
  readonly rowsRead: number;
  readonly rowsKept: number;
  readonly problems: readonly { readonly row: number; readonly reason: string }[];
  readonly firstAt: Date;
  readonly lastAt: Date;
  readonly summary: Omit<LogSummary, "importId">;
  readonly days: readonly LogDay[];
};

export type LogImport = {
  readonly id: LogImportId;
  readonly sourceName: string;
  readonly fileName: string;
  readonly sha256: string;
  readonly timeZone: string;
  readonly mapping: unknown;
  readonly rowsRead: number;
  readonly rowsKept: number;
  readonly problems: readonly { readonly row: number; readonly reason: string }[];
  readonly importedAt: string;
  readonly importedBy: string;
  readonly summary: LogSummary;
};

/** Files remembered in the list; every refused row is kept up to this many. */
const MAX_PROBLEMS_KEPT = 1_000;
const SCHEMA_VERSION = 1;

export function logs(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    /** The imports of a job, newest first. */
    list: (jobId: JobId): Promise<readonly LogImport[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.logImport.findMany({
          where: { ...own, jobId, state: "done", job: visibleJobs(scope) },
          orderBy: { createdAt: "desc" },
          include: { source: true, createdByMember: { select: { name: true } } },
        });
        return rows.map((row) => ({
          id: asId<"log import">(row.id),
          sourceName: row.source.name,
          fileName: row.fileName,
          sha256: row.sha256,
          timeZone: row.source.timeZone,
          mapping: row.source.mapping,
          rowsRead: row.rowsRead,
          rowsKept: row.rowsKept,
          problems: row.problems as { row: number; reason: string }[],
          importedAt: row.createdAt.toISOString(),
          importedBy: row.createdByMember.name,
          summary: { ...(row.summary as Omit<LogSummary, "importId">), importId: row.id },
        }));
      }),

    /** Keeps a file's days. The same file for the same source again replaces nothing and answers the first import. */
    add: (input: NewLogImport): Promise<LogImportId> =>
      withTenant(
        scope,
        async (tx) => {
          const { jobId } = input;
          const source = await tx.logSource.upsert({
            where: { tenantId_name: { ...own, name: input.source.name } },
            create: {
              ...own,
              ...input.source,
              mapping: asJson(input.source.mapping),
              schemaVersion: SCHEMA_VERSION,
              createdBy: scope.userId,
              updatedBy: scope.userId,
            },
            update: {
              mapping: asJson(input.source.mapping),
              lastUsedAt: new Date(),
              updatedBy: scope.userId,
              version: { increment: 1 },
            },
            select: { id: true },
          });
          const before = await tx.logImport.findFirst({
            where: { ...own, jobId, sourceId: source.id, sha256: input.sha256 },
            select: { id: true },
          });
          if (before) return asId<"log import">(before.id);
          const made = await tx.logImport.create({
            data: {
              ...own,
              jobId,
              sourceId: source.id,
              fileName: input.fileName,
              sha256: input.sha256,
              storageKey: input.sha256,
              sizeBytes: input.sizeBytes,
              state: "done",
              rowsRead: input.rowsRead,
              rowsKept: input.rowsKept,
              problems: asJson(input.problems.slice(0, MAX_PROBLEMS_KEPT)),
              firstAt: input.firstAt,
              lastAt: input.lastAt,
              finishedAt: new Date(),
              summary: asJson(input.summary),
              createdBy: scope.userId,
            },
            select: { id: true },
          });
          const days = input.days.map((day) => asDate(day.day) ?? day.startsAt);
          await tx.logDay.deleteMany({ where: { ...own, jobId, sourceId: source.id, day: { in: days } } });
          await tx.logDay.createMany({
            data: input.days.map((day) => ({
              ...own,
              jobId,
              sourceId: source.id,
              importId: made.id,
              day: asDate(day.day) ?? day.startsAt,
              startsAt: day.startsAt,
              timeZone: input.source.timeZone,
              samples: day.offsetMinutes.length,
              offsetMinutes: packed(day.offsetMinutes),
              ...Object.fromEntries(
                Object.entries(day.channels).map(([channel, values]) => [channel, packed(values)]),
              ),
            })),
          });
          await appendActivity(tx, scope, {
            action: "log imported",
            entity: "log import",
            entityId: made.id,
            jobId,
            after: { fileName: input.fileName, rowsKept: input.rowsKept, rowsRefused: input.problems.length },
          });
          return asId<"log import">(made.id);
        },
        { timeoutMs: 120_000 },
      ),

    /** Replaces the kept summary after the job's humidity limit has changed. */
    resummarize: (importId: string, summary: Omit<LogSummary, "importId">): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.logImport.updateMany({
          where: { ...own, id: importId },
          data: { summary: asJson(summary) },
        });
      }),

    /** The days of one import, oldest first. */
    days: (jobId: JobId, importId: string): Promise<readonly LogDay[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.logDay.findMany({
          where: { ...own, jobId, importId, job: visibleJobs(scope) },
          orderBy: { day: "asc" },
        });
        return rows.map((row) => ({
          day: row.day.toISOString().slice(0, 10),
          startsAt: row.startsAt,
          offsetMinutes: unpacked(row.offsetMinutes),
          channels: Object.fromEntries(
            DAY_CHANNELS.flatMap((channel) => {
              const bytes = row[channel];
              return bytes === null ? [] : [[channel, unpacked(bytes)]];
            }),
          ),
        }));
      }),
  };
}
