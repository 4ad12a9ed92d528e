import { setTimeout as pause } from "node:timers/promises";
import { bundleTagWith } from "@/lib/domain/field-bundle";
import { seededChance } from "@/lib/engineering/simulation/seeded-draws";
import { MEET_EVERY_MS, SPREAD_MS } from "@/lib/offline/contact";
import { type FieldApp, type PhoneOfTest, upload, withFieldApp } from "./field-app";

/** What one part of the run cost: answer times as a phone saw them, and processor time a request. */
export type Part = {
  readonly name: string;
  readonly requests: number;
  readonly seconds: number;
  readonly p50Ms: number;
  readonly p95Ms: number;
  readonly slowestMs: number;
  readonly applicationMs: number;
  readonly databaseMs: number;
};

export type ManyTechsReport = {
  readonly parts: readonly Part[];
  /** What was wrong; empty when nothing was. */
  readonly faults: readonly string[];
};

/** Phones that were at work before. */
const OTHERS = 20;

type Values = Readonly<Record<string, string | number>>;

/** Written in the attic without a signal: one upload when it is back. */
const WAITING: Values = {
  notes: "hot attic",
  refrigerant: "R-410A",
  outdoorDbF: 91,
  supplyVoltage: 240,
  outdoorUnitAmps: 11.2,
  secondReturnStaticInWc: 0.2,
  secondSupplyStaticInWc: 0.25,
};

/** Then with a signal, one after the other: a phone sends when "Next" is pressed. */
const READINGS: readonly Values[] = [
  { secondAirflowCfm: 1_050 },
  { secondReturnDbF: 75 },
  { secondReturnWbF: 63 },
  { secondSupplyDbF: 56 },
  { secondSupplyWbF: 54 },
  { secondSuctionPressurePsig: 118 },
  { secondSuctionLineF: 52 },
  { firstAirflowCfm: 700 },
];

/**
 * So many techs of one company at once, each with a phone that does as `lib/offline/contact` says.
 *
 * 1. "signal back": all have written without a signal; it is back for all in the same moment. Each phone waits its
 *    chance part of `SPREAD_MS` and sends all in one upload, whose answer says that there is no other news.
 * 2. "at work": a reading every `betweenMs` (half to one and a half of it), every fifth sent twice as after a lost answer,
 *    and every 30 s a question for news, which is answered by the tag alone.
 * 3. "in one moment": every phone sends one reading in the very same moment, which no crowd of people does.
 */
export function manyTechs(techs: number, betweenMs: number): Promise<ManyTechsReport> {
  return withFieldApp(techs + OTHERS, async (all) => {
    const faults: string[] = [];
    // Each phone has its bundle; and other phones have been at work before, as on a server that has run for a while:
    // the first requests compile, connect and plan, which is not what is asked.
    for (const phone of all.phones) await news(all, phone, [], faults, 200);
    const app = { ...all, phones: all.phones.slice(OTHERS) };
    await Promise.all(
      all.phones.slice(0, OTHERS).map(async (phone) => {
        for (let volts = 221; volts <= 240; volts++)
          await put(all, phone, { supplyVoltage: volts }, [], faults, {
            base: volts === 221 ? null : volts - 1,
          });
      }),
    );
    const each =
      (work: (phone: PhoneOfTest, random: () => number, times: number[]) => Promise<void>) =>
      (times: number[]) =>
        Promise.all(app.phones.map((phone, index) => work(phone, seededChance(index + 1), times)));
    const parts = [
      await measured(
        app,
        "signal back",
        each(async (phone, random, times) => {
          await pause(SPREAD_MS * random());
          await put(app, phone, WAITING, times, faults, { asksNews: true });
        }),
      ),
      await measured(
        app,
        "at work",
        each((phone, random, times) => workOf(app, phone, random, betweenMs, times, faults)),
      ),
      await measured(
        app,
        "in one moment",
        each((phone, _, times) => put(app, phone, { firstReturnDbF: 75 }, times, faults)),
      ),
    ];
    const expected: Values = Object.assign({ firstReturnDbF: 75 }, WAITING, ...READINGS);
    for (const phone of app.phones) {
      const { inputs, saves } = await app.recordOf(phone.jobId);
      for (const [key, value] of Object.entries(expected))
        if (inputs[key] !== value) faults.push(`${phone.jobId}: ${key} is ${inputs[key]}`);
      if (saves !== READINGS.length + 2) faults.push(`${phone.jobId}: saved ${saves} times`);
    }
    return { parts, faults };
  });
}

async function workOf(
  app: FieldApp,
  phone: PhoneOfTest,
  random: () => number,
  betweenMs: number,
  times: number[],
  faults: string[],
): Promise<void> {
  // Phones were taken up at different moments.
  let nextMeeting = performance.now() + MEET_EVERY_MS * random();
  for (const values of READINGS) {
    await pause(betweenMs * (0.5 + random()));
    await put(app, phone, values, times, faults, { twice: random() < 0.2 });
    if (performance.now() < nextMeeting) continue;
    nextMeeting += MEET_EVERY_MS;
    await news(app, phone, times, faults, 304);
  }
}

/** Runs one part and says what it cost. */
async function measured(
  app: FieldApp,
  name: string,
  work: (times: number[]) => Promise<unknown>,
): Promise<Part> {
  const times: number[] = [];
  const [cpu, begun] = [app.processorSeconds(), performance.now()];
  await work(times);
  const [after, seconds] = [app.processorSeconds(), (performance.now() - begun) / 1_000];
  return {
    name,
    requests: times.length,
    seconds,
    p50Ms: share(times, 0.5),
    p95Ms: share(times, 0.95),
    slowestMs: share(times, 1),
    applicationMs: (1_000 * (after.application - cpu.application)) / times.length,
    databaseMs: (1_000 * (after.database - cpu.database)) / times.length,
  };
}

/** The tag of the bundle each phone holds. */
const tags = new Map<string, string>();

async function news(
  app: FieldApp,
  phone: PhoneOfTest,
  times: number[],
  faults: string[],
  expected: 200 | 304,
): Promise<void> {
  const answer = await ask(app, phone, "GET", "/api/field/bundle", undefined, times);
  if (answer.status !== expected) faults.push(`bundle: ${answer.status} instead of ${expected}`);
  if (answer.tag !== null) tags.set(phone.jobId, answer.tag);
}

async function put(
  app: FieldApp,
  phone: PhoneOfTest,
  values: Values,
  times: number[],
  faults: string[],
  options: { readonly twice?: boolean; readonly asksNews?: boolean; readonly base?: number | null } = {},
): Promise<void> {
  const { twice = false, asksNews = false, base = null } = options;
  const fields = Object.entries(values).map(([key, value]) => [key, { base, value }]);
  const tag = tags.get(phone.jobId) ?? "";
  const body = JSON.stringify({
    ...upload(Object.fromEntries(fields)),
    waiting: { fields: 0, photos: 0 },
    bundleTag: asksNews ? tag : null,
  });
  for (let time = 0; time < (twice ? 2 : 1); time++) {
    const { status, text } = await ask(app, phone, "PUT", `/api/jobs/${phone.jobId}/startup`, body, times);
    if (status !== 200) return void faults.push(`upload: ${status} ${text.slice(0, 200)}`);
    const { version, bundleTag } = JSON.parse(text) as { version: number; bundleTag?: string };
    const own = bundleTagWith(tag, 0, version) ?? "";
    if (asksNews && bundleTag !== own) faults.push("upload: news where there is none");
    tags.set(phone.jobId, own);
  }
}

async function ask(
  app: FieldApp,
  phone: PhoneOfTest,
  method: string,
  where: string,
  body: string | undefined,
  times: number[],
) {
  const begun = performance.now();
  const answer = await fetch(`${app.address}${where}`, {
    method,
    headers: {
      cookie: phone.cookie,
      "if-none-match": tags.get(phone.jobId) ?? "",
      "x-dewledger-person": phone.userId,
      "x-dewledger-company": app.tenantId,
    },
    ...(body === undefined ? {} : { body }),
  });
  const text = await answer.text();
  times.push(performance.now() - begun);
  return { status: answer.status, text, tag: answer.headers.get("etag") };
}

/** The time within which this share of the requests was answered, ms. */
function share(times: readonly number[], part: number): number {
  const sorted = times.toSorted((one, other) => one - other);
  return sorted[Math.min(sorted.length - 1, Math.ceil(part * sorted.length) - 1)] ?? 0;
}
