import type { LogSummary } from "@/lib/domain/evaluate";
import { asId, type JobId, type LogImportId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { appendActivity } from "./activity";
import { asDate, asJson } from "./json";
import { DAY_CHANNELS, type LogDay, packed, unpacked } from "./log-day";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

/** What may be said of a row, or of a whole file. */
export type RowRemark = { readonly row: number; readonly reason: string };

export type NewLogImport = {
  readonly jobId: JobId;
  readonly sourceId: string;
  readonly timeZone: string;
  readonly fileName: string;
  readonly sha256: string;
  readonly sizeBytes: number;
  readonly rowsRead: number;
  readonly rowsKept: number;
  readonly problems: readonly RowRemark[];
  /** The file of all of them, when they are more than are kept here. */
  readonly remarksKey: string | null;
  readonly firstAt: Date;
  readonly lastAt: Date;
  /** `null` for a weather station, which says nothing of the house by itself. */
  readonly summary: Omit<LogSummary, "importId"> | null;
  /** The days the file touches, merged with what was kept of them. */
  readonly days: readonly LogDay[];
};

export type LogImport = {
  readonly id: LogImportId;
  readonly sourceId: string;
  readonly sourceName: string;
  readonly fileName: string;
  readonly sha256: string;
  readonly timeZone: string;
  readonly rowsRead: number;
  readonly rowsKept: number;
  readonly problems: readonly RowRemark[];
  readonly remarksKey: string | null;
  /** How many remarks there are in all. */
  readonly remarkCount: number;
  readonly importedAt: string;
  readonly importedBy: string;
  readonly firstAt: string;
  readonly lastAt: string;
  readonly summary: LogSummary | null;
};

/** Remarks kept in the row itself, to be shown; all of more are in a file. */
export const MOST_REMARKS_SHOWN = 1_000;

export function logs(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    /** The imports of a job, newest first: houses' logs and weather stations. */
    list: (jobId: JobId): Promise<readonly LogImport[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.logImport.findMany({
          where: { ...own, jobId, state: "done", job: visibleJobs(scope) },
          orderBy: { createdAt: "desc" },
          include: { source: true, createdByMember: { select: { name: true } } },
        });
        return rows.map((row) => ({
          id: asId<"log import">(row.id),
          sourceId: row.sourceId,
          sourceName: row.source.name,
          fileName: row.fileName,
          sha256: row.sha256,
          timeZone: row.source.timeZone,
          rowsRead: row.rowsRead,
          rowsKept: row.rowsKept,
          problems: row.problems as RowRemark[],
          remarksKey: row.remarksStorageKey,
          remarkCount: Math.max(row.remarkCount, (row.problems as RowRemark[]).length),
          importedAt: row.createdAt.toISOString(),
          importedBy: row.createdByMember.name,
          firstAt: (row.firstAt ?? row.createdAt).toISOString(),
          lastAt: (row.lastAt ?? row.createdAt).toISOString(),
          summary:
            row.summary === null
              ? null
              : { ...(row.summary as Omit<LogSummary, "importId">), importId: row.id },
        }));
      }),

    /** The import of the very same file for the same logger, or null. */
    findSame: (jobId: JobId, sourceId: string, sha256: string): Promise<LogImportId | null> =>
      withTenant(scope, async (tx) => {
        const row = await tx.logImport.findFirst({
          where: { ...own, jobId, sourceId, sha256 },
          select: { id: true },
        });
        return row === null ? null : asId<"log import">(row.id);
      }),

    /** Keeps a file and its days, which replace the kept ones. */
    add: (input: NewLogImport): Promise<LogImportId> =>
      withTenant(scope, async (tx) => {
        const { jobId, sourceId, days, timeZone, problems, remarksKey, summary, ...facts } = input;
        const made = await tx.logImport.create({
          data: {
            ...own,
            ...facts,
            jobId,
            sourceId,
            storageKey: input.sha256,
            state: "done",
            remarkCount: problems.length,
            remarksStorageKey: remarksKey,
            problems: asJson(problems.slice(0, MOST_REMARKS_SHOWN)),
            finishedAt: new Date(),
            ...(summary === null ? {} : { summary: asJson(summary) }),
            createdBy: scope.userId,
          },
          select: { id: true },
        });
        const touched = days.map((day) => asDate(day.day) ?? day.startsAt);
        await tx.logDay.deleteMany({ where: { ...own, jobId, sourceId, day: { in: touched } } });
        await tx.logDay.createMany({
          data: days.map((day) => ({
            ...own,
            jobId,
            sourceId,
            importId: made.id,
            day: asDate(day.day) ?? day.startsAt,
            startsAt: day.startsAt,
            timeZone,
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
          after: { fileName: input.fileName, rowsKept: input.rowsKept, rowsRefused: problems.length },
        });
        return asId<"log import">(made.id);
      }),

    /** Replaces the kept summary after what the log is held against has changed. */
    resummarize: (importId: string, summary: Omit<LogSummary, "importId">): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.logImport.updateMany({
          where: { ...own, id: importId },
          data: { summary: asJson(summary) },
        });
      }),

    /** Whether an import, or one that has not been read yet, rests on a stored file. */
    needsFile: (sha256: string): Promise<boolean> =>
      withTenant(scope, async (tx) => {
        const kept = await tx.logImport.count({ where: { ...own, sha256 } });
        const asked = await tx.workItem.count({
          where: {
            ...own,
            task: "import log",
            state: { in: ["waiting", "running", "failed"] },
            input: { path: ["sha256"], equals: sha256 },
          },
        });
        return kept + asked > 0;
      }),

    /** The kept days of one logger in a job's house that begin up to an instant, oldest first. */
    days: (jobId: JobId, sourceId: string, upTo: Date): Promise<readonly LogDay[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.logDay.findMany({
          where: { ...own, jobId, sourceId, startsAt: { lte: upTo }, job: visibleJobs(scope) },
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
