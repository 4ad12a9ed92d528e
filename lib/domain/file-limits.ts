/** The most the office takes of one picture, bytes; said as 20 MB. */
export const MOST_PHOTO_BYTES = 20 * 1024 * 1024;

/**
 * The most that is taken of one log, as it is sent and unpacked, over all files of an archive, bytes; said as 50 MB: two years of minutes
 * with nine columns. Reading takes about five times as much memory, and 512 MB is the aim for the whole
 * (`tests/schemas/log-file/largest-log.long.test.ts`).
 */
export const MOST_LOG_BYTES = 50_000_000;
