import { setTimeout as pause } from "node:timers/promises";
import { seededChance } from "@/lib/engineering/simulation/seeded-draws";
import { type FieldApp, type PhoneOfTest, upload, withFieldApp } from "./field-app";

export type ManyTechsReport = {
  readonly techs: number;
  readonly requests: number;
  readonly seconds: number;
  readonly p50Ms: number;
  readonly p95Ms: number;
  readonly slowestMs: number;
  /** Of the one moment in which every phone sent at once. */
  readonly burstP95Ms: number;
  /** What was wrong; empty when nothing was. */
  readonly faults: readonly string[];
};

/** The readings of a startup in the order in which a tech takes them. */
const READINGS: readonly (readonly [string, number])[] = [
  ["outdoorDbF", 91],
  ["supplyVoltage", 240],
  ["secondAirflowCfm", 1_050],
  ["secondReturnDbF", 75],
  ["secondReturnWbF", 63],
  ["secondSupplyDbF", 56],
  ["secondSupplyWbF", 54],
  ["secondReturnStaticInWc", 0.2],
  ["secondSupplyStaticInWc", 0.25],
  ["firstAirflowCfm", 700],
];

/**
 * So many techs work at once: each phone sends reading after reading with a second or so between, asks for its
 * bundle, and sends some uploads twice, as after a lost answer. Before that, all send in one moment.
 */
export function manyTechs(techs: number, betweenMs: number): Promise<ManyTechsReport> {
  return withFieldApp(techs, async (app) => {
    const faults: string[] = [];
    const times: number[] = [];
    // The first request of each route compiles and connects; a phone that waits for that is not what is asked.
    const warm = app.phones[0];
    if (warm) await ask(app, warm, "GET", "/api/field/bundle", undefined, []);

    const burst: number[] = [];
    const notes = app.phones.map((phone) => ({
      phone,
      sent: upload({ notes: { base: null, value: "hot attic" } }),
    }));
    await Promise.all(notes.map(({ phone, sent }) => put(app, phone, sent, burst, faults)));

    const begun = performance.now();
    await Promise.all(
      app.phones.map((phone, index) => workOf(app, phone, seededChance(index + 1), betweenMs, times, faults)),
    );
    const seconds = (performance.now() - begun) / 1_000;
    for (const phone of app.phones) {
      const { inputs, saves } = await app.recordOf(phone.jobId);
      for (const [key, value] of READINGS)
        if (inputs[key] !== value) faults.push(`${phone.jobId}: ${key} is ${inputs[key]}`);
      if (saves !== READINGS.length + 1) faults.push(`${phone.jobId}: saved ${saves} times`);
    }
    return {
      techs,
      requests: times.length + burst.length,
      seconds,
      p50Ms: share(times, 0.5),
      p95Ms: share(times, 0.95),
      slowestMs: share(times, 1),
      burstP95Ms: share(burst, 0.95),
      faults,
    };
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
  let tag: string | null = null;
  for (const [key, value] of READINGS) {
    await pause(betweenMs * (0.5 + random()));
    const sent = upload({ [key]: { base: null, value } });
    await put(app, phone, sent, times, faults);
    if (random() < 0.2) await put(app, phone, sent, times, faults);
    if (random() < 0.3) {
      const known: Record<string, string> = tag === null ? {} : { "if-none-match": tag };
      const answer = await ask(app, phone, "GET", "/api/field/bundle", undefined, times, known);
      if (answer.status !== 200 && answer.status !== 304) faults.push(`bundle: ${answer.status}`);
      tag = answer.headers.get("etag");
    }
  }
}

async function put(
  app: FieldApp,
  phone: PhoneOfTest,
  sent: ReturnType<typeof upload>,
  times: number[],
  faults: string[],
): Promise<void> {
  const answer = await ask(
    app,
    phone,
    "PUT",
    `/api/jobs/${phone.jobId}/startup`,
    JSON.stringify(sent),
    times,
  );
  if (answer.status !== 200) faults.push(`upload: ${answer.status} ${answer.text.slice(0, 200)}`);
}

async function ask(
  app: FieldApp,
  phone: PhoneOfTest,
  method: string,
  where: string,
  body: string | undefined,
  times: number[],
  more: Readonly<Record<string, string>> = {},
) {
  const begun = performance.now();
  const answer = await fetch(`${app.address}${where}`, {
    method,
    headers: {
      cookie: phone.cookie,
      "x-dewledger-person": phone.userId,
      "x-dewledger-company": app.tenantId,
      ...more,
    },
    ...(body === undefined ? {} : { body }),
  });
  const text = await answer.text();
  times.push(performance.now() - begun);
  return { status: answer.status, headers: answer.headers, text };
}

/** The time within which this share of the requests was answered, ms. */
function share(times: readonly number[], part: number): number {
  const sorted = times.toSorted((one, other) => one - other);
  return sorted[Math.min(sorted.length - 1, Math.ceil(part * sorted.length) - 1)] ?? 0;
}
