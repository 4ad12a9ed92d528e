/*
 * Part of `npm run bench`: what one upload of one reading costs, without the web server: statements sent to PostgreSQL and
 * processor time of this process, beside that of judging the job. `DEWLEDGER_STATEMENTS=1` prints the statements of one
 * upload. Prints; decides nothing.
 */
import { randomUUID } from "node:crypto";
import pg from "pg";
import { scopeOfMember } from "@/lib/auth/scope";
import { catalog } from "@/lib/db/catalog";
import { evaluateJob } from "@/lib/domain/evaluate";
import { asId } from "@/lib/domain/ids";
import { syncStartup } from "@/lib/services/sync-startup";
import { twoStageHeatPump } from "@/seed/catalog/equipment";
import { FULL_JOB } from "../support/full-job";
import { makeCrew } from "../support/people";
import { LOAD, openJob, save } from "../support/service-jobs";
import { onOwnServer } from "./on-own-server";

const UPLOADS = 200;

const statements: string[] = [];
const send = pg.Client.prototype.query;
pg.Client.prototype.query = function counted(this: pg.Client, ...given: unknown[]) {
  const [first] = given;
  statements.push(typeof first === "string" ? first : ((first as { text?: string } | null)?.text ?? "?"));
  return Reflect.apply(send, this, given);
} as typeof send;

const cpuMs = (from: NodeJS.CpuUsage) => {
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1_000;
};

await onOwnServer(async () => {
  const { office, tech } = await makeCrew();
  const modelId = await catalog(office).addEquipment(twoStageHeatPump);
  const jobId = await openJob(office, { techIds: [tech.userId] });
  await save(office, jobId, "load_summary", LOAD);
  await save(office, jobId, "equipment_selection", { equipmentModelId: modelId, capacitySetting: "3 tons" });
  const upload = async (count: number) => {
    const scope = await scopeOfMember(tech.userId, tech.tenantId);
    if (!scope) throw new Error("The tech is no member.");
    return syncStartup(scope, {
      jobId: asId<"job">(jobId),
      clientId: randomUUID(),
      deviceTime: new Date().toISOString(),
      fields: { secondAirflowCfm: { base: count === 0 ? null : 999 + count, value: 1_000 + count } },
    });
  };
  for (let count = 0; count < 30; count++) await upload(count);
  statements.length = 0;
  const begun = process.cpuUsage();
  const clock = performance.now();
  for (let count = 30; count < 30 + UPLOADS; count++) await upload(count);
  const eachMs = cpuMs(begun) / UPLOADS;
  const wallMs = (performance.now() - clock) / UPLOADS;
  const each = statements.length / UPLOADS;
  const before = process.cpuUsage();
  for (let count = 0; count < UPLOADS; count++) evaluateJob(FULL_JOB);
  const judgeMs = cpuMs(before) / UPLOADS;
  process.stdout.write(
    `an upload of one reading: ${each.toFixed(1)} statements, ${eachMs.toFixed(1)} ms of processor here (${wallMs.toFixed(1)} ms by the clock); ` +
      `judging a whole job: ${judgeMs.toFixed(2)} ms\n`,
  );
  if (process.env.DEWLEDGER_STATEMENTS) {
    statements.length = 0;
    await upload(30 + UPLOADS);
    for (const one of statements) process.stdout.write(`  ${one.replaceAll(/\s+/g, " ").slice(0, 700)}\n`);
  }
});
