import { gammaln } from "simple-statistics";

/** The two-sided 95 % point of the normal distribution. */
const Z95 = 1.959964;

export type Share = { readonly share: number; readonly low: number; readonly high: number };

/**
 * A share of jobs with its 95 % interval, after Wilson.
 *
 * @param hits - Jobs with the complaint, 0 to `jobs`.
 * @param jobs - Jobs counted, 1 or more.
 * @returns Shares, 0 to 1.
 * @throws {RangeError} outside those ranges.
 * @see Wilson, J. Am. Stat. Assoc. 22 (1927) 209; Newcombe, Statist. Med. 17 (1998) 857, method 3 (from memory).
 */
export function wilson95(hits: number, jobs: number): Share {
  if (!(Number.isInteger(jobs) && jobs >= 1 && Number.isInteger(hits) && hits >= 0 && hits <= jobs)) {
    throw new RangeError("A share needs whole counts: at least one job, and no more hits than jobs.");
  }
  const share = hits / jobs;
  const z2 = Z95 * Z95;
  const middle = (hits + z2 / 2) / (jobs + z2);
  const half = (Z95 / (jobs + z2)) * Math.sqrt(jobs * share * (1 - share) + z2 / 4);
  // At the ends the limit is exact; rounding in the last digit must not show as -0.0 or above 1.
  return { share, low: hits === 0 ? 0 : middle - half, high: hits === jobs ? 1 : middle + half };
}

export type Difference = { readonly difference: number; readonly low: number; readonly high: number };

/**
 * The difference of two shares (first less second) with its 95 % interval from their Wilson limits.
 *
 * @param first - Hits and jobs of the one group; at least one job.
 * @param second - Hits and jobs of the other.
 * @returns Differences, -1 to 1.
 * @throws {RangeError} where {@link wilson95} does.
 * @see Newcombe, Statist. Med. 17 (1998) 873, method 10 (from memory).
 */
export function shareDifference(
  first: readonly [hits: number, jobs: number],
  second: readonly [hits: number, jobs: number],
): Difference {
  const one = wilson95(...first);
  const other = wilson95(...second);
  const difference = one.share - other.share;
  return {
    difference,
    low: difference - Math.hypot(one.share - one.low, other.high - other.share),
    high: difference + Math.hypot(one.high - one.share, other.share - other.low),
  };
}

/**
 * How likely chance alone would put at least `hits` of all hits into the first group, the margins being as they are:
 * Fisher's exact test, one-sided. Sound for a handful of jobs, where intervals are not.
 *
 * @param first - Hits and jobs of the group that stands out.
 * @param second - Hits and jobs of all others.
 * @returns A probability, 0 to 1.
 * @throws {RangeError} where a group has more hits than jobs, or counts are no whole numbers.
 * @see Fisher, The Design of Experiments (1935), chapter 2 (from memory).
 */
export function chanceOfAsMany(
  first: readonly [hits: number, jobs: number],
  second: readonly [hits: number, jobs: number],
): number {
  const [hits, jobs] = first;
  const [otherHits, otherJobs] = second;
  for (const [some, all] of [first, second])
    if (!(Number.isInteger(some) && Number.isInteger(all) && some >= 0 && some <= all))
      throw new RangeError("A chance needs whole counts, and no more hits than jobs.");
  const allHits = hits + otherHits;
  const all = logChoose(jobs + otherJobs, allHits);
  let sum = 0;
  for (let count = hits; count <= Math.min(jobs, allHits); count += 1) {
    if (allHits - count > otherJobs) continue;
    sum += Math.exp(logChoose(jobs, count) + logChoose(otherJobs, allHits - count) - all);
  }
  return Math.min(1, sum);
}

const logFactorial = (count: number) => (count < 2 ? 0 : gammaln(count + 1));
const logChoose = (all: number, some: number) =>
  logFactorial(all) - logFactorial(some) - logFactorial(all - some);
