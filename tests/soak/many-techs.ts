import { buildIfStale } from "../../seed/prepare.mjs";
import { manyTechs } from "../support/many-techs";

/*
 * Part of `npm run soak`: 200 techs with a startup each, all at once, a reading every 10 s a phone (nobody
 * takes them faster). Alone: `npx tsx tests/soak/many-techs.ts`. The aim is p95 under a second on two cores.
 */
const TECHS = Number(process.env.DEWLEDGER_TECHS ?? "200");
const BETWEEN_MS = Number(process.env.DEWLEDGER_BETWEEN_MS ?? "10000");

buildIfStale();
const report = await manyTechs(TECHS, BETWEEN_MS);
const ms = (value: number) => `${Math.round(value)} ms`;
process.stdout.write(
  `${report.techs} techs, ${report.requests} requests in ${report.seconds.toFixed(0)} s: p50 ${ms(report.p50Ms)}, ` +
    `p95 ${ms(report.p95Ms)}, slowest ${ms(report.slowestMs)}; all in one moment: p95 ${ms(report.burstP95Ms)}; ` +
    `${report.faults.length} faults\n`,
);
for (const fault of report.faults.slice(0, 20)) process.stdout.write(`  ${fault}\n`);
process.exit(report.faults.length === 0 ? 0 : 1);
