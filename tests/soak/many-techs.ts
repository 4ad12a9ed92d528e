import { loadavg } from "node:os";
import { buildIfStale } from "../../seed/prepare.mjs";
import { manyTechs } from "../support/many-techs";

/*
 * Part of `npm run soak`: 200 techs with a startup each, all at once, a reading every 10 s a phone (nobody
 * takes them faster). Alone: `npx tsx tests/soak/many-techs.ts`. The aim is p95 under a second on two cores. What the
 * phones do is in tests/support/many-techs.ts. Application, PostgreSQL and the 200 phones share this machine, so times by
 * the clock are an upper bound, and mean little while others use it (the load before is printed); processor time a
 * request, of the server's two processes alone, means the same on a busy machine.
 */
const TECHS = Number(process.env.DEWLEDGER_TECHS ?? "200");
const BETWEEN_MS = Number(process.env.DEWLEDGER_BETWEEN_MS ?? "10000");

buildIfStale();
const load = loadavg()[0] ?? Number.NaN;
const { parts, faults } = await manyTechs(TECHS, BETWEEN_MS);
const ms = (value: number) => `${Math.round(value)} ms`;
process.stdout.write(
  `${TECHS} techs, load of the machine before: ${load.toFixed(1)}; ${faults.length} faults\n`,
);
for (const { name, requests, seconds, applicationMs, databaseMs, ...times } of parts) {
  process.stdout.write(
    `  ${name}: ${requests} requests in ${seconds.toFixed(0)} s, p50 ${ms(times.p50Ms)}, p95 ${ms(times.p95Ms)}, ` +
      `slowest ${ms(times.slowestMs)}; processor a request: application ${applicationMs.toFixed(1)} ms, ` +
      `PostgreSQL ${databaseMs.toFixed(1)} ms\n`,
  );
}
for (const fault of faults.slice(0, 20)) process.stdout.write(`  ${fault}\n`);
process.exit(faults.length === 0 ? 0 : 1);
