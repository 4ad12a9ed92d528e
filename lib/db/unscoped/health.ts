import { database } from "../client";

/** True when the database answers. */
export async function unscopedDatabaseAnswers(): Promise<boolean> {
  try {
    await database().$queryRaw`SELECT 1`;
    return true;
  } catch {
    return false;
  }
}
