import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { isEngineeringError } from "@/lib/engineering/errors";

/*
 * The one runner of the random-inputs tests. `npm run check` gives every public function of an engineering folder some hundred to
 * some thousand inputs; `npm run soak` sets DEWLEDGER_RANDOM_RUNS and gives every one of them at least that many.
 */

/** Inputs a plain property gets. */
export const RANDOM_RUNS = Number(process.env.DEWLEDGER_RANDOM_RUNS ?? 2_000);
const SOAKING = process.env.DEWLEDGER_RANDOM_RUNS !== undefined;
/** Least share of RANDOM_RUNS that must reach every function when not soaking. */
const LEAST_SHARE = 1 / 20;
/** One call that takes longer counts as a hang. */
const HANG_MS = 5_000;

/**
 * Settings of fast-check for a property. `share` lowers the number for slow functions in the quick run, never in the soak;
 * `soakShare` raises it there for functions that only some of the inputs reach.
 */
export function runs(
  seed: number,
  share = 1,
  soakShare = 1,
): { readonly seed: number; readonly numRuns: number } {
  return { seed, numRuns: Math.ceil(RANDOM_RUNS * (SOAKING ? soakShare : share)) };
}

type Tally = { calls: number; refused: number; totalMs: number; slowestMs: number };
const tallies = new Map<unknown, Tally>();

/**
 * The functions of a folder's index, each counting and timing its calls, and failing on a result with a number that is none or a
 * sentence that shows one. `gaps` names functions whose answer may hold NaN for a listed gap.
 */
export function tried<M extends object>(folder: M, gaps: readonly (keyof M)[] = []): M {
  const entries = Object.entries(folder).map(([name, member]) => {
    if (typeof member !== "function") return [name, member];
    const tally: Tally = { calls: 0, refused: 0, totalMs: 0, slowestMs: 0 };
    tallies.set(member, tally);
    return [
      name,
      watched(
        name,
        member as Callable,
        tally,
        gaps.some((gap) => gap === name),
      ),
    ];
  });
  return Object.fromEntries(entries) as M;
}

type Callable = (...given: readonly unknown[]) => unknown;

function watched(name: string, fn: Callable, tally: Tally, mayHoldGaps: boolean): Callable {
  return (...given) => {
    tally.calls += 1;
    // A third of the inputs is refused, and a soak has no use for where: collecting the trace costs a fifth of its time.
    if (SOAKING) Error.stackTraceLimit = 0;
    const start = performance.now();
    try {
      const result = fn(...given);
      const bad = mayHoldGaps ? null : firstUnlawful(result);
      if (bad !== null) throw new Error(`${name} answered with ${bad}`);
      return result;
    } catch (error) {
      if (isEngineeringError(error)) tally.refused += 1;
      throw error;
    } finally {
      if (SOAKING) Error.stackTraceLimit = 10;
      const took = performance.now() - start;
      tally.totalMs += took;
      tally.slowestMs = Math.max(tally.slowestMs, took);
    }
  };
}

/** The result, or null after a typed refusal. Anything else thrown fails the test. */
export function lawful<T>(call: () => T): T | null {
  try {
    return call();
  } catch (error) {
    if (isEngineeringError(error)) return null;
    throw error;
  }
}

/** The first number that is not finite, or text that shows one, anywhere in a result. */
export function firstUnlawful(value: unknown): string | null {
  if (typeof value === "number") return Number.isFinite(value) ? null : String(value);
  if (typeof value === "string") return /NaN|Infinity|undefined/.test(value) ? `“${value}”` : null;
  if (typeof value !== "object" || value === null) return null;
  for (const [key, part] of Object.entries(value)) {
    const bad = firstUnlawful(part);
    if (bad !== null) return `${bad} in ${key}`;
  }
  return null;
}

/** A test that may take as long as its runs need. */
export function randomTest(name: string, body: () => void): void {
  test(name, { timeout: SOAKING ? 0 : 30_000 }, body);
}

/** Last in the file: every function the folder's index exports has met enough inputs, answered some, and never hung. */
export function everyFunctionTried(name: string, folder: object): void {
  test(`every public function of ${name} was tried`, () => {
    const functions = Object.entries(folder).filter(([, member]) => typeof member === "function");
    expect(functions.length).toBeGreaterThan(0);
    const rows = functions.map(([title, member]) => ({
      title,
      ...(tallies.get(member) ?? { calls: 0, refused: 0, totalMs: 0, slowestMs: 0 }),
    }));
    report(name, rows);
    const least = SOAKING ? RANDOM_RUNS : RANDOM_RUNS * LEAST_SHARE;
    expect(rows.filter((row) => row.calls < least).map((row) => `${row.title}: ${row.calls}`)).toEqual([]);
    // Inputs so wild that nothing is ever answered would test refusals only.
    expect(rows.filter((row) => row.calls - row.refused < row.calls / 1_000).map((row) => row.title)).toEqual(
      [],
    );
    expect(rows.filter((row) => row.slowestMs > HANG_MS).map((row) => row.title)).toEqual([]);
  });
}

/** For the soak's table: what each function met, as a file beside the others. */
function report(name: string, rows: readonly object[]): void {
  const folder = process.env.DEWLEDGER_RANDOM_REPORT;
  if (folder === undefined) return;
  mkdirSync(folder, { recursive: true });
  writeFileSync(path.join(folder, `${name}.json`), JSON.stringify(rows));
}
