import { buildIfStale } from "../../seed/prepare.mjs";
import { faultRounds } from "../support/fault-rounds";

/*
 * Part of `npm run soak`: 200 rounds of two phones through a connection that drops, delays, cuts, doubles and breaks
 * requests. Alone: `npx tsx tests/soak/field-faults.ts`. DEWLEDGER_SEED chooses other faults.
 */
buildIfStale();
const ROUNDS = Number(process.env.DEWLEDGER_ROUNDS ?? "200");
const report = await faultRounds(ROUNDS, Number(process.env.DEWLEDGER_SEED ?? "20261126"));
const seen = [...report.seen].map(([fault, count]) => `${fault} ${count}`).join(", ");
process.stdout.write(
  `${report.rounds} rounds took ${report.requests} requests (${seen}): ${report.faults.length} faults\n`,
);
for (const fault of report.faults) process.stdout.write(`  ${fault}\n`);
process.exit(report.faults.length === 0 ? 0 : 1);
