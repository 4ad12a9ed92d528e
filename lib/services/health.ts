import { unscopedDatabaseAnswers, unscopedPendingMigrations } from "@/lib/db/unscoped/health";

export type Health = {
  readonly process: "up";
  readonly database: "answers" | "does not answer";
  readonly migrations: "up to date" | "pending" | "unknown";
};

/** Whether this process can serve: it runs, the database answers, its schema is the one this code needs. */
export async function health(): Promise<Health> {
  if (!(await unscopedDatabaseAnswers())) {
    return { process: "up", database: "does not answer", migrations: "unknown" };
  }
  const pending = await unscopedPendingMigrations();
  return { process: "up", database: "answers", migrations: pending ? "pending" : "up to date" };
}
