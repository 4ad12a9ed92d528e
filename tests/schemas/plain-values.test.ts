import { expect, test } from "vitest";
import { fieldSchema } from "@/lib/domain/field-schema";
import { logCallbackSchema } from "@/lib/schemas/callback";
import { photoDetailsSchema } from "@/lib/schemas/field";
import { chooseWeatherSchema } from "@/lib/schemas/weather";

const JOB = "0190a000-0000-7000-8000-000000000000";
const call = (reportedOn: string) =>
  logCallbackSchema.safeParse({
    jobId: JOB,
    kind: "too_humid",
    reportedOn,
    reportedByName: "",
    complaint: "Sticky",
  }).success;

test.each(["0001-01-01", "0026-07-31", "1899-12-31", "2200-01-01", "9999-12-31", "2026-02-30"])(
  "%s is no day that anybody means, in a form and in a record",
  (day) => {
    expect(call(day)).toBe(false);
    expect(fieldSchema({ kind: "date", label: "Day", group: "Days" }).safeParse(day).success).toBe(false);
  },
);

test("the first and the last day that are taken", () => {
  expect([call("1900-01-01"), call("2199-12-31"), call("2026-07-31")]).toEqual([true, true, true]);
});

const place = (latitude: string) =>
  chooseWeatherSchema.safeParse({ jobId: JOB, weatherFileId: "", latitude, longitude: "-95.37" }).success;
const photo = (latitude: string) =>
  photoDetailsSchema.safeParse({ sha256: "a".repeat(64), latitude, longitude: "-95.37" }).success;

test.each(["0x10", "1e1", "", " ", "90.1", "NaN", "Infinity", "--5"])("“%s” is no latitude", (text) => {
  // An empty field of the form is a place not given, which one of the two alone cannot be.
  expect(place(text)).toBe(false);
  if (text !== "1e1") expect(photo(text)).toBe(false);
});

test("a place is taken as people and phones write it", () => {
  expect([place("29.76"), place("−29.76"), place(" 29 "), place("+29.")]).toEqual([true, true, true, true]);
  expect([photo("29.76"), photo("-29.76"), photo("0"), photo("1e-7")]).toEqual([true, true, true, true]);
});
