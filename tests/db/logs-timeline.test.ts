import { readFileSync } from "node:fs";
import { zipSync } from "fflate";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { logSources } from "@/lib/db/log-sources";
import { logs } from "@/lib/db/logs";
import type { JobId } from "@/lib/domain/ids";
import { importLog } from "@/lib/services/import-log";
import { jobView } from "@/lib/services/job-view";
import { getJob } from "@/lib/services/jobs";
import { logReviewView } from "@/lib/services/log-view";
import { logWindow } from "@/lib/services/log-window";
import { addWeatherFile, chooseWeather } from "@/lib/services/weather";
import { type Crew, given, makeCrew } from "../support/people";
import { openJob, refusedBy, save } from "../support/service-jobs";

let crew: Crew;
let job: JobId;

beforeAll(async () => {
  crew = await makeCrew();
});
beforeEach(async () => {
  job = await openJob(crew.office);
  await save(crew.office, job, "load_summary", { humidityLimitPct: 55 });
});
afterAll(closeDatabase);

const HOUR_MS = 3_600_000;
const START = Date.UTC(2026, 6, 1, 12);
const text = (words: string) => new TextEncoder().encode(words);
/** Hourly rows in UTC, so that the test needs no zone of its own. */
const hourly = (from: number, count: number, rh: (hour: number) => number) =>
  `Time,Indoor temperature F,Indoor RH %\n${Array.from({ length: count }, (_, at) => {
    const time = new Date(START + (from + at) * HOUR_MS).toISOString().slice(0, 19);
    return `${time}Z,75.0,${rh(from + at)}`;
  }).join("\n")}\n`;
const add = (bytes: Uint8Array, sourceName = "Hall", fileName = "hall.csv") =>
  importLog(crew.office, { jobId: job, fileName, bytes, sourceName, mapping: null });
const newest = async () => given((await logs(crew.office).list(job))[0]);

test("two files that overlap in the middle of a day are one log: nothing doubled, nothing lost", async () => {
  await add(text(hourly(0, 60, () => 50)));
  // 20 of its 60 hours are those of the first file; the newer reading counts.
  const second = await add(text(hourly(40, 60, () => 60)));
  expect(second.overlap).toBe(20);
  const { summary } = await newest();
  expect(summary?.loggedHours).toBeCloseTo(100, 9);
  // 40 hours at 50 % and 60 at 60 %.
  expect(summary?.meanRhPct).toBeCloseTo((40 * 50 + 60 * 60) / 100, 9);
  expect(summary?.hoursAboveLimit).toBeCloseTo(60, 9);
});

test("an archive of two months is one import; a sheet of other interval under the same name is refused", async () => {
  const zip = zipSync({
    "a/july.csv": text(hourly(0, 48, () => 50)),
    "a/august.csv": text(hourly(48, 48, () => 52)),
    "readme.md": text("not a table"),
  });
  const { rowsKept } = await add(zip, "Hall", "summer.zip");
  expect(rowsKept).toBe(96);
  const quarter = `Time,Indoor temperature F,Indoor RH %\n${Array.from({ length: 40 }, (_, at) => `${new Date(START + at * 900_000).toISOString().slice(0, 19)}Z,75,50`).join("\n")}\n`;
  const refused = await refusedBy(add(text(quarter)));
  expect(refused.fields[0]).toMatchObject({ field: "sourceName" });
  expect(refused.message).toContain("15 min apart");
});

test("a station's file gives the outdoors, and a second sensor is held against the first", async () => {
  const station = `Time,Outdoor temperature F,Outdoor RH %\n${Array.from({ length: 100 }, (_, at) => `${new Date(START + at * HOUR_MS).toISOString().slice(0, 19)}Z,85,70`).join("\n")}\n`;
  expect((await add(text(station), "Airport station")).isStation).toBe(true);
  await add(text(hourly(0, 100, (hour) => 50 + (hour % 2))), "Bedroom");
  await add(text(hourly(0, 100, (hour) => 58 + (hour % 2))));
  const { summary } = await newest();
  expect(summary?.outdoorFrom).toBe("station file");
  // The bedroom reads 8 % less in every hour.
  expect(summary?.analysis?.sensors.secondMinusFirstRhPct).toBeCloseTo(-8, 9);
  // 85 °F and 70 % is a dew point of 74.1 °F (ASHRAE Fundamentals 2017 ch. 1, by psychrolib called bare).
  expect(summary?.analysis?.humidity?.meanOutdoorDewPointF).toBeCloseTo(74.1, 1);
});

test("without outdoor readings the job's typical year is drawn, marked as typical, and judges nothing", async () => {
  const file = readFileSync(new URL("../../seed/weather/houston-2a.epw", import.meta.url));
  const weatherFileId = await addWeatherFile(crew.office, {
    name: "Houston, typical",
    sourceNote: "see seed/weather",
    bytes: file,
  });
  await chooseWeather(crew.office, { jobId: job, weatherFileId, latitude: 29.8, longitude: -95.4 });
  await add(text(hourly(0, 100, () => 58)));
  const { id, summary } = await newest();
  expect(summary?.outdoorFrom).toBe("typical year");
  expect(summary?.analysis?.humidity?.overOutdoor).toBeNull();
  const asked = { jobId: job, importId: id, fromMs: START, toMs: START + 99 * HOUR_MS };
  const drawn = given((await logWindow(crew.office, asked)).channels.typicalDewPointF);
  // The file's own row, in °C and by its standard clock, six hours behind: 1 July 06:00 to 07:00, which it calls hour 7.
  const row = given(
    file
      .toString()
      .split("\n")
      .find((line) => /^\d+,7,1,7,/.test(line)),
  ).split(",");
  expect(drawn.low[0]).toBeCloseTo(Number(row[7]) * 1.8 + 32, 1);
  const found = await getJob(crew.office, job);
  const { context } = await jobView(crew.office, job);
  const view = await logReviewView(crew.office, found, context);
  expect(view.outdoors).toMatchObject({ from: "typical year", typical: { name: "Houston, typical" } });
  const load = given(view.cannotTell.find(({ ruleId }) => ruleId === "logs.load-summary"));
  expect(load.statement).toContain("a typical year’s and judge nothing");
  // A station of those days takes its place.
  const station = `Time,Outdoor temperature F,Outdoor RH %\n${Array.from({ length: 100 }, (_, at) => `${new Date(START + at * HOUR_MS).toISOString().slice(0, 19)}Z,85,70`).join("\n")}\n`;
  await add(text(station), "Airport station");
  const after = await logReviewView(crew.office, found, context);
  expect(after.outdoors).toEqual({ from: "station file", typical: null });
  expect((await logWindow(crew.office, asked)).channels.typicalDewPointF).toBeUndefined();
});

test("the review's findings, causes and Lived cells speak of the log chosen, and its columns are remembered", async () => {
  await add(text(hourly(0, 400, (hour) => 58 + (hour % 3))));
  const { id } = await newest();
  await save(crew.office, job, "humidity_review", { logImportId: id });
  const { evaluation, context } = await jobView(crew.office, job);
  const ids = evaluation.findings.humidity_review.map(({ ruleId }) => ruleId);
  expect(ids).toContain("review.dry-hours");
  expect(ids).toContain("logs.wet-spell");
  expect(ids.filter((one) => one === "logs.dry-hours")).toEqual([]);
  expect(context.log?.askedWith?.humidityLimitPct).toBe(55);
  const spell = evaluation.ledger.find(({ key }) => key === "wet-spell");
  expect(spell?.cells.lived).toMatchObject({ value: 400, verdict: "falls short" });
  // Another limit: the same log is held against it at the next look.
  await save(crew.office, job, "load_summary", { humidityLimitPct: 59 }, 1);
  expect((await jobView(crew.office, job)).context.log?.limitPct).toBe(59);
  const [source] = await logSources(crew.office).list();
  expect(source).toMatchObject({
    name: "Hall",
    headerFingerprint: "time | indoor temperature f | indoor rh %",
  });
});

test("a window of the log is thin enough to draw, with its peaks, and of that time only", async () => {
  await add(text(hourly(0, 2_000, (hour) => (hour === 1_234 ? 90 : 50))));
  const { id } = await newest();
  const whole = await logWindow(crew.office, {
    jobId: job,
    importId: id,
    fromMs: START,
    toMs: START + 2_000 * HOUR_MS,
  });
  expect(whole.atMs.length).toBeLessThanOrEqual(701);
  expect(Math.max(...given(whole.channels.indoorRhPct).high.map((value) => value ?? 0))).toBe(90);
  const day = await logWindow(crew.office, {
    jobId: job,
    importId: id,
    fromMs: START,
    toMs: START + 23 * HOUR_MS,
  });
  expect(day.atMs).toHaveLength(24);
});

test("a clock that is none is refused by name", async () => {
  const attempt = importLog(crew.office, {
    jobId: job,
    fileName: "x.csv",
    bytes: text(hourly(0, 40, () => 50)),
    sourceName: "Hall",
    mapping: null,
    timeZone: "Mars/Olympus",
  });
  expect((await refusedBy(attempt)).fields).toMatchObject([{ field: "timeZone" }]);
});
