import { buildIfStale } from "../../seed/prepare.mjs";
import { killNineApp } from "../support/kill-nine-app";

/*
 * Part of `npm run soak`: 20 times signal 9 for the application or PostgreSQL while three people save through the
 * built application. Alone: `npx tsx tests/soak/kill-nine-app.ts`. DEWLEDGER_SEED chooses other moments.
 */
const ROUNDS = 20;

buildIfStale();
const report = await killNineApp(ROUNDS, Number(process.env.DEWLEDGER_SEED ?? "20261125"));
process.stdout.write(
  `${ROUNDS} kills (${report.killedApps} application, ${report.killedServers} PostgreSQL): ` +
    `${report.acknowledged} saves acknowledged, ${report.resent} sent again, ${report.faults.length} faults\n`,
);
for (const fault of report.faults) process.stdout.write(`  ${fault}\n`);
process.exit(report.faults.length === 0 ? 0 : 1);
