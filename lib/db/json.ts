import type { Prisma } from "./generated/client";

/** A value of plain data as the JSON column takes it. `undefined` members vanish, as in JSON. */
export function asJson(value: unknown): Prisma.InputJsonValue {
  return JSON.parse(JSON.stringify(value)) as Prisma.InputJsonValue;
}

/** An ISO day as the date column takes it. */
export function asDate(day: string | null): Date | null {
  return day === null ? null : new Date(`${day}T00:00:00Z`);
}

/** The ISO day of a date column. */
export function asDay(date: Date | null): string | null {
  return date === null ? null : date.toISOString().slice(0, 10);
}
