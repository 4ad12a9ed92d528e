/*
 * Part of `npm run bench`: the jobs table at 1,000, 100,000 and 1,000,000 jobs, on the embedded server, with row-level
 * security as in production. The companies share one database and are asked in turn, so that a slow moment meets all.
 * Fewer jobs for a quick look: `JOBS=1000,10000,100000 npx tsx tests/bench/jobs-table.ts`. Prints; decides nothing.
 */
import { jobListSchema } from "@/lib/schemas/job";
import { listJobs } from "@/lib/services/job-table";
import { addMember, makeCrew } from "../support/people";
import { fillJobs } from "./many-jobs";
import { onOwnServer } from "./on-own-server";

const SIZES = (process.env.JOBS ?? "1000,100000,1000000").split(",").map(Number);
/** p95 of 300 rounds is the sixteenth slowest: one slow moment does not make it. */
const ROUNDS = 320;
const WARM_UP = 20;
const TECHS = 20;
/** The aim: p95 of the greatest company over that of the smallest. */
const MOST_GROWTH = 1.3;

await onOwnServer(async (client) => {
  // Indexes are built once over all rows: thousands of small additions cost minutes.
  const { rows } = await client.query<{ name: string; made: string }>(
    "SELECT indexname AS name, indexdef AS made FROM pg_indexes WHERE tablename = 'job' AND indexdef NOT LIKE '% UNIQUE %'",
  );
  for (const { name } of rows) await client.query(`DROP INDEX ${name}`);
  const companies = [];
  for (const size of SIZES) {
    const { office } = await makeCrew();
    const techs = [];
    for (let count = 0; count < TECHS; count++) techs.push((await addMember(office.tenantId, "tech")).userId);
    await fillJobs(client, office, techs, size);
    companies.push({ size, office, tech: techs[3] ?? "" });
  }
  for (const { made } of rows) await client.query(made);
  await client.query("VACUUM ANALYZE");

  const questions = {
    "as it opens": () => ({}),
    "a page further down": (size: number) => ({ after: String(Math.round(size / 2)) }),
    "filtered by verdict": () => ({ verdict: "falls short" }),
    "filtered by tech": (_: number, tech: string) => ({ tech }),
    "searched, many found": () => ({ search: "ember" }),
    "searched, one customer": (size: number) => ({ search: `elm ${Math.floor(size / 20)} way` }),
    "searched, one customer, by startup": (size: number) => ({
      search: `elm ${Math.floor(size / 20)} way`,
      sort: "startup",
    }),
    "sorted by customer": () => ({ sort: "customer" }),
    "sorted by startup, further down": (size: number) => ({ sort: "startup", after: String(size / 2) }),
    "filtered and sorted": () => ({ verdict: "falls short", sort: "customer", way: "down" }),
    "filtered by tech, sorted": (_: number, tech: string) => ({ tech, sort: "customer" }),
    "two filters, sorted": () => ({ attention: "1", stage: "startup_record", sort: "review" }),
  };
  // Of 1,000 jobs four are found by both: with pages of 50 the greater companies would carry twelve times the rows.
  const pages: Readonly<Record<string, number>> = { "two filters, sorted": 3 };
  const taken = new Map<string, number[]>();
  for (let round = 0; round < ROUNDS; round++) {
    for (const [name, query] of Object.entries(questions)) {
      for (const { size, office, tech } of companies) {
        const asked = jobListSchema.parse(query(size, tech));
        const started = performance.now();
        const { jobs } = await listJobs(office, asked, pages[name]);
        const ms = performance.now() - started;
        if (jobs.length === 0) throw new Error(`${name}: nothing found among ${size} jobs.`);
        if (round >= WARM_UP) taken.set(`${name} ${size}`, [...(taken.get(`${name} ${size}`) ?? []), ms]);
      }
    }
  }
  const p95 = (name: string, size: number) => {
    const sorted = (taken.get(`${name} ${size}`) ?? []).toSorted((a, b) => a - b);
    return sorted[Math.ceil(0.95 * sorted.length) - 1] ?? Number.NaN;
  };
  for (const name of Object.keys(questions)) {
    const values = SIZES.map((size) => p95(name, size));
    const growth = (values.at(-1) ?? Number.NaN) / (values[0] ?? Number.NaN);
    const figures = SIZES.map(
      (size, at) => `${values[at]?.toFixed(1)} ms at ${size.toLocaleString("en-US")}`,
    );
    process.stdout.write(
      `jobs table ${name}: p95 ${figures.join(", ")}; growth ${growth.toFixed(2)}, aim ≤ ${MOST_GROWTH} ${growth <= MOST_GROWTH ? "met" : "NOT met"}\n`,
    );
  }
});
