import { readFileSync } from "node:fs";
import { afterAll, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import {
  addWeatherFile,
  chooseWeather,
  listWeather,
  retireWeather,
  weatherChoiceView,
} from "@/lib/services/weather";
import { type Crew, makeCrew } from "../support/people";
import { openJob, refusedBy } from "../support/service-jobs";

const bytes = (name: string) => readFileSync(new URL(`../../seed/weather/${name}`, import.meta.url));
const HOUSTON = { name: "Houston", sourceNote: "see seed/weather", bytes: bytes("houston-2a.epw") };
const INDIANAPOLIS = {
  name: "Indianapolis",
  sourceNote: "see seed/weather",
  bytes: bytes("indianapolis-tmy3.epw"),
};

let crew: Crew;
let houston: string;
let indianapolis: string;
beforeAll(async () => {
  crew = await makeCrew();
  houston = await addWeatherFile(crew.office, HOUSTON);
  indianapolis = await addWeatherFile(crew.office, INDIANAPOLIS);
}, 60_000);
afterAll(closeDatabase);

test("the nearest weather year stands first once the home's place is known, with how much higher it stands", async () => {
  const jobId = await openJob(crew.office);
  const before = await weatherChoiceView(crew.office, jobId);
  expect(before.files.map(({ file, distanceMi }) => [file.name, distanceMi])).toEqual([
    ["Houston", null],
    ["Indianapolis", null],
  ]);
  await chooseWeather(crew.office, { jobId, weatherFileId: indianapolis, latitude: 39.2, longitude: -85.9 });
  const after = await weatherChoiceView(crew.office, jobId);
  expect(after.job).toMatchObject({
    weatherFileId: indianapolis,
    home: { latitude: 39.2, longitude: -85.9 },
  });
  expect(after.files.map(({ file }) => file.name)).toEqual(["Indianapolis", "Houston"]);
  // The file's own line 1 says 39.71°, −86.27°, 246 m = 807 ft.
  expect(after.files[0]?.distanceMi).toBeGreaterThan(38);
  expect(after.files[0]?.distanceMi).toBeLessThan(43);
  expect(after.files[0]?.jobs).toBe(1);
});

test("a year some job is held against stays; another goes, and comes back when it is added again", async () => {
  const refused = await refusedBy(retireWeather(crew.office, indianapolis));
  expect(refused).toMatchObject({ code: "CONFLICT", message: expect.stringMatching(/1 job is held/) });
  await retireWeather(crew.office, houston);
  expect((await listWeather(crew.office)).map(({ name }) => name)).toEqual(["Indianapolis"]);
  expect(await addWeatherFile(crew.office, HOUSTON)).toBe(houston);
});

test("the very same file is refused, and what is no weather year by its row", async () => {
  const twice = await refusedBy(addWeatherFile(crew.office, { ...HOUSTON, name: "Again" }));
  expect(twice.fields[0]).toMatchObject({
    field: "file",
    message: expect.stringMatching(/is here as “Houston”/),
  });
  const short = new TextEncoder().encode("LOCATION,X,TX,USA,,0,30,-95,-6,10\n");
  expect(await refusedBy(addWeatherFile(crew.office, { ...HOUSTON, bytes: short }))).toMatchObject({
    code: "UNSUPPORTED_FILE",
  });
});

test("years and places belong to their company", async () => {
  const other = await makeCrew();
  expect(await listWeather(other.office)).toEqual([]);
  expect(await refusedBy(retireWeather(other.owner, houston))).toMatchObject({ code: "NOT_FOUND" });
  const jobId = await openJob(other.office);
  const foreign = { jobId, weatherFileId: houston, latitude: null, longitude: null };
  expect(await refusedBy(chooseWeather(other.office, foreign))).toMatchObject({ code: "INVALID_INPUT" });
});
