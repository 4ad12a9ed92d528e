import { randomUUID } from "node:crypto";
import pino from "pino";
import { env } from "@/lib/env";

let logger: pino.Logger | null = null;

/**
 * Structured log lines: what was asked, by which request, how it ended, how long it took.
 * Never names, addresses, e-mail or readings: ids only.
 */
export function log(): pino.Logger {
  logger ??= pino({ level: env().LOG_LEVEL, base: null, timestamp: pino.stdTimeFunctions.isoTime });
  return logger;
}

/** The request's own id when a proxy gave one that is safe to print, otherwise a new one. */
export function requestIdFrom(given: string | null): string {
  return given && /^[\w-]{8,64}$/.test(given) ? given : randomUUID();
}
