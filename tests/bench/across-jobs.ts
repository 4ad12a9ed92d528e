/*
 * Part of `npm run bench`: what across-jobs answers over 100,000 jobs with a signed startup, on the embedded server, with
 * row-level security as in production; beside it a bare count over the same facts. The aim is 300 ms. Prints; decides nothing.
 */
import { withTenant } from "@/lib/db/with-tenant";
import { acrossJobsSchema } from "@/lib/schemas/across-jobs";
import { comparison, whatGoesWith } from "@/lib/services/across-jobs";
import { inRole } from "../support/connect";
import { addMember, makeCrew } from "../support/people";
import { fillJobs } from "./many-jobs";
import { onOwnServer } from "./on-own-server";

const JOBS = Number(process.env.JOBS ?? 100_000);
const ROUNDS = 15;

await onOwnServer(async (client) => {
  const { owner, office } = await makeCrew();
  await fillJobs(client, office, [(await addMember(office.tenantId, "tech")).userId], JOBS);
  await inRole(client, "app_user", owner, async () => {
    // Invented spreads; one airflow setting has five times the complaints of the others.
    await client.query(
      `INSERT INTO job_fact (tenant_id, job_id, startup_signed_on, startup_month, builder, capacity_setting,
         first_stage_airflow_setting, second_stage_airflow_setting, fan_run_on_seconds, fan_between_calls,
         first_stage_cfm_per_ton, second_stage_cfm_per_ton, second_stage_start_offset_f, step_back_to_first_stage,
         share_above_limit_pct, humidity_complaint_count, callback_count, engine_version)
       SELECT tenant_id, id, date '2024-01-01' + (number % 900)::int, 1 + number % 12, 'Builder ' || number % 9,
         (ARRAY['2 tons', '2.5 tons', '3 tons'])[1 + number % 3], 'tap ' || number % 5, 'tap ' || number % 4,
         (ARRAY[0, 60, 90])[1 + number % 3], (ARRAY['off', 'on'])[1 + number % 2], 275 + 80 * random(),
         300 + 100 * random(), 1 + number % 3, number % 2 = 0, 60 * random() * random(),
         (random() < CASE WHEN number % 4 = 3 THEN 0.1 ELSE 0.02 END)::int, (random() < 0.1)::int, 'bench'
       FROM job WHERE tenant_id = $1::uuid
       ON CONFLICT (tenant_id, job_id) DO NOTHING`,
      [owner.tenantId],
    );
  });
  await client.query("VACUUM ANALYZE");

  const ask = (query: Record<string, unknown> = {}) => acrossJobsSchema.parse(query);
  const questions: Readonly<Record<string, () => Promise<unknown>>> = {
    "a bare count of the facts (yardstick)": () =>
      withTenant(owner, (tx) => tx.jobFact.count({ where: { tenantId: owner.tenantId } })),
    "what goes with humidity complaints, all settings": () => whatGoesWith(owner, ask()),
    "complaints by airflow setting": () => comparison(owner, { ...ask(), by: "secondStageAirflowSetting" }),
    "the same with a distribution": () =>
      comparison(owner, { ...ask({ measure: "shareAboveLimitPct" }), by: "secondStageAirflowSetting" }),
    "the same with the jobs of one group": () =>
      comparison(owner, { ...ask({ value: "tap 3" }), by: "secondStageAirflowSetting" }),
  };
  console.log(`\nacross ${JOBS.toLocaleString("en-US")} jobs, median and slowest of ${ROUNDS}, aim 300 ms`);
  for (const [name, answer] of Object.entries(questions)) {
    await answer();
    const taken: number[] = [];
    for (let round = 0; round < ROUNDS; round += 1) {
      const started = performance.now();
      await answer();
      taken.push(performance.now() - started);
    }
    taken.sort((one, other) => one - other);
    const median = taken[Math.floor(ROUNDS / 2)] ?? 0;
    console.log(
      `${name.padEnd(52)} ${median.toFixed(0).padStart(5)} ms ${(taken.at(-1) ?? 0).toFixed(0).padStart(6)} ms`,
    );
  }
});
