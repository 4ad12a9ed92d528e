import { describe, expect, it } from "vitest";
import { type LogFile, type LogMapping, logMappingSchema, readLogFile } from "@/lib/schemas/log-file";

const read = (
  text: string | Uint8Array,
  zone = "America/Chicago",
  mapping: LogMapping | null = null,
): LogFile => {
  const result = readLogFile(text, { zone, mapping });
  if (result.kind !== "read") throw new Error(`${result.code}: ${result.reason}`);
  return result;
};
const refusal = (text: string | Uint8Array, mapping: LogMapping | null = null, zone = "America/Chicago") => {
  const result = readLogFile(text, { zone, mapping });
  if (result.kind === "read") throw new Error("was read");
  return result;
};
const utc = (file: LogFile) => [...file.samples.timeMs].map((ms) => new Date(ms).toISOString().slice(0, 16));
const channel = (file: LogFile, name: keyof LogFile["samples"]["channels"]) => [
  ...(file.samples.channels[name] ?? []),
];

const simple = (dates: readonly string[], heading = "time,indoor_temp_F,indoor_RH") =>
  [heading, ...dates.map((date, index) => `${date},${70 + index},${50 + index}`)].join("\n");

describe("a field study's style of file", () => {
  const text = [
    "site_id,local_datetime,indoor_set_point_F,thermostat_temp_F,thermostat_RH,OA_temp_F,OA_RH,cool_stage_1_sec,cool_stage_2_sec,fan_sec",
    "12,2023-07-14 13:00:00,75,75.4,52.1,91.2,61,300,0,300",
    "12,2023-07-14 13:05:00,75,75.1,51.8,91.4,60,150,0,150",
    "12,2023-07-14 13:10:00,75,NA,51.5,91.6,60,301,75,300",
  ].join("\n");

  it("is mapped by its headings and turned into shares of the interval", () => {
    const file = read(text);
    expect(
      file.mapping.columns.map(({ channel, heading, unit }) => `${channel}: ${heading} ${unit}`),
    ).toEqual([
      "setpointF: indoor_set_point_F °F",
      "outdoorRhPct: OA_RH %",
      "outdoorF: OA_temp_F °F",
      "indoorRhPct: thermostat_RH %",
      "indoorF: thermostat_temp_F °F",
      "secondStageShare: cool_stage_2_sec seconds",
      "firstStageShare: cool_stage_1_sec seconds",
      "fanShare: fan_sec seconds",
    ]);
    expect(utc(file)).toEqual(["2023-07-14T18:00", "2023-07-14T18:05", "2023-07-14T18:10"]);
    expect(channel(file, "firstStageShare")).toEqual([1, 0.5, 1]);
    expect(channel(file, "secondStageShare")).toEqual([0, 0, 0.25]);
    expect(channel(file, "indoorF")).toEqual([75.4, 75.1, Number.NaN]);
    expect(file.refused).toEqual([]);
    expect(logMappingSchema.parse(file.mapping)).toEqual(file.mapping);
  });

  it("of several sites asks which, and reads the one chosen", () => {
    const two = `${text}\n13,2023-07-14 13:00:00,70,70.5,40,91,61,0,0,0\n13,2023-07-14 13:05:00,70,70.6,40,91,61,0,0,0`;
    expect(refusal(two)).toMatchObject({ code: "several houses" });
    expect(refusal(two).reason).toContain("12, 13");
    const { mapping } = read(text);
    const chosen = read(two, "America/Chicago", {
      ...mapping,
      onlyWhere: { heading: "site_id", value: "13" },
    });
    expect(channel(chosen, "indoorF")).toEqual([70.5, 70.6]);
  });
});

describe("forms of a table", () => {
  const expected = [70, 71];

  it.each<[string, string | Uint8Array]>([
    ["commas", "time,indoor temp F\n2024-05-01 00:00,70\n2024-05-01 00:05,71"],
    ["tabs", "time\tindoor temp F\n2024-05-01 00:00\t70\n2024-05-01 00:05\t71"],
    ["semicolons and decimal commas", "time;indoor temp F\n2024-05-01 00:00;70,0\n2024-05-01 00:05;71,0"],
    ["a byte-order mark", "\uFEFFtime,indoor temp F\n2024-05-01 00:00,70\n2024-05-01 00:05,71"],
    ["old line ends", "time,indoor temp F\r\n2024-05-01 00:00,70\r\n2024-05-01 00:05,71\r\n"],
    [
      "quoted text",
      '"time","indoor temp F","note"\n"2024-05-01 00:00","70","door, open\nlong"\n"2024-05-01 00:05","71",""',
    ],
    [
      "remarks above",
      "Log of the living room\nexported,by hand\ntime,indoor temp F\n2024-05-01 00:00,70\n2024-05-01 00:05,71",
    ],
    [
      "a line of units",
      "time,indoor temp\n,°C\n2024-05-01 00:00,21.111111111\n2024-05-01 00:05,21.666666667",
    ],
    ["UTF-16", Buffer.from("\uFEFFtime,indoor temp F\n2024-05-01 00:00,70\n2024-05-01 00:05,71", "utf16le")],
    ["date and time apart", "date,clock,indoor temp F\n2024-05-01,0:00,70\n2024-05-01,0:05,71"],
    [
      "°C told by the heading",
      "time,indoor temp (°C)\n2024-05-01 00:00,21.111111111\n2024-05-01 00:05,21.666666667",
    ],
    [
      "°C told by the values",
      "time,indoor temp\n2024-05-01 00:00,21.111111111\n2024-05-01 00:05,21.666666667",
    ],
    [
      "Latin-1 °C",
      Buffer.from(
        "time,indoor temp (°C)\n2024-05-01 00:00,21.111111111\n2024-05-01 00:05,21.666666667",
        "latin1",
      ),
    ],
  ])("%s", (_, text) => {
    const file = read(text);
    const found = channel(file, "indoorF");
    expect(found).toHaveLength(2);
    for (const [index, value] of expected.entries()) expect(found[index]).toBeCloseTo(value, 6);
    expect(utc(file)[0]).toBe("2024-05-01T05:00");
    expect(file.refused).toEqual([]);
  });
});

describe("dates", () => {
  it.each<[string, readonly string[], string, string]>([
    ["ISO with T", ["2024-05-01T00:00", "2024-05-01T00:05"], "year-month-day", "2024-05-01T05:00"],
    ["ISO in UTC", ["2024-05-01T00:00Z", "2024-05-01T00:05Z"], "year-month-day", "2024-05-01T00:00"],
    [
      "ISO with an offset",
      ["2024-05-01T00:00-07:00", "2024-05-01T00:05-07:00"],
      "year-month-day",
      "2024-05-01T07:00",
    ],
    ["seconds since 1970", ["1714521600", "1714521900"], "year-month-day", "2024-05-01T00:00"],
    ["day first", ["13/05/2024 0:00", "13/05/2024 0:05"], "day-month-year", "2024-05-13T05:00"],
    ["month first", ["5/13/2024 12:00 AM", "5/13/2024 12:05 AM"], "month-day-year", "2024-05-13T05:00"],
    ["afternoon", ["5/13/2024 1:00 PM", "5/13/2024 1:05 PM"], "month-day-year", "2024-05-13T18:00"],
    ["points", ["13.05.2024 0:00", "13.05.2024 0:05"], "day-month-year", "2024-05-13T05:00"],
    [
      "24:00 is the next midnight",
      ["2024-05-01 24:00", "2024-05-02 00:05"],
      "year-month-day",
      "2024-05-02T05:00",
    ],
  ])("%s", (_, dates, order, first) => {
    const file = read(simple(dates));
    expect(file.mapping.dateOrder).toBe(order);
    expect(utc(file)[0]).toBe(first);
    expect(file.samples.timeMs).toHaveLength(2);
  });

  it("small numbers are settled by the order in which time runs on evenly", () => {
    const hours = Array.from(
      { length: 72 },
      (_, hour) => `${String(1 + Math.floor(hour / 24)).padStart(2, "0")}/05/2024 ${hour % 24}:00`,
    );
    expect(read(simple(hours).replaceAll(/,(\d+),(\d+)$/gm, ",70,50")).mapping.dateOrder).toBe(
      "day-month-year",
    );
  });

  it("one day of small numbers cannot tell: the person chooses", () => {
    const text = simple(["04/05/2024 0:00", "04/05/2024 0:05"]);
    expect(refusal(text).code).toBe("unclear dates");
    const mapping: LogMapping = {
      version: 1,
      timeHeading: "time",
      timeOfDayHeading: null,
      dateOrder: "month-day-year",
      columns: [{ heading: "indoor_temp_F", channel: "indoorF", unit: "°F" }],
      onlyWhere: null,
    };
    expect(utc(read(text, "America/Chicago", mapping))[0]).toBe("2024-04-05T05:00");
  });

  it("orders that contradict each other are refused as a file", () => {
    expect(refusal(simple(["13/05/2024 0:00", "05/14/2024 0:05"])).code).toBe("unclear dates");
  });

  it("a date that is none is refused as a row, with its line and reason", () => {
    const file = read(
      simple([
        "2024-02-28 00:00",
        "2024-02-30 00:05",
        "2024-02-28 00:10",
        "",
        "28.02.24 00:15",
        "2024-02-28 25:00",
        "2024-02-28 00:05",
      ]),
    );
    expect(file.refused.map(({ row }) => row)).toEqual([3, 5, 6, 7]);
    expect(file.refused[0]?.reason).toContain('"2024-02-30 00:05"');
    expect(file.refused[1]?.reason).toBe("the row has no date");
    expect(file.samples.timeMs).toHaveLength(3);
    expect(file.reorderedRows).toBe(1);
    expect(channel(file, "indoorF")).toEqual([70, 76, 72]);
  });
});

describe("clock changes in Chicago", () => {
  it("autumn 2023: the hour that comes twice becomes two hours of instants", () => {
    const file = read(
      simple([
        "2023-11-05 00:30",
        "2023-11-05 01:00",
        "2023-11-05 01:30",
        "2023-11-05 01:00",
        "2023-11-05 01:30",
        "2023-11-05 02:00",
      ]),
    );
    expect(utc(file)).toEqual([
      "2023-11-05T05:30",
      "2023-11-05T06:00",
      "2023-11-05T06:30",
      "2023-11-05T07:00",
      "2023-11-05T07:30",
      "2023-11-05T08:00",
    ]);
    expect([...file.samples.utcOffsetMin]).toEqual([-300, -300, -300, -360, -360, -360]);
    expect(file.clockChanges).toMatchObject([{ kind: "repeated hour", fromLine: 3, toLine: 6, rows: 4 }]);
    expect(file.duplicates).toEqual([]);
  });

  it("the same file newest first gives the same instants", () => {
    const dates = [
      "2023-11-05 02:00",
      "2023-11-05 01:30",
      "2023-11-05 01:00",
      "2023-11-05 01:30",
      "2023-11-05 01:00",
      "2023-11-05 00:30",
    ];
    const file = read(simple(dates));
    expect(utc(file)).toEqual([
      "2023-11-05T05:30",
      "2023-11-05T06:00",
      "2023-11-05T06:30",
      "2023-11-05T07:00",
      "2023-11-05T07:30",
      "2023-11-05T08:00",
    ]);
    expect(channel(file, "indoorF")).toEqual([75, 74, 73, 72, 71, 70]);
    expect(file.reorderedRows).toBe(0);
  });

  it("spring 2024: 01:55 is followed by 03:00 without a gap", () => {
    const file = read(
      simple(["2024-03-10 01:50", "2024-03-10 01:55", "2024-03-10 03:00", "2024-03-10 03:05"]),
    );
    expect(utc(file)).toEqual([
      "2024-03-10T07:50",
      "2024-03-10T07:55",
      "2024-03-10T08:00",
      "2024-03-10T08:05",
    ]);
    expect(file.gaps).toEqual([]);
    expect(file.clockChanges).toEqual([]);
  });

  it("spring 2024: rows in the hour that never was are kept and flagged", () => {
    const file = read(simple(["2024-03-10 01:55", "2024-03-10 02:00", "2024-03-10 02:05"]));
    expect(utc(file)).toEqual(["2024-03-10T07:55", "2024-03-10T08:00", "2024-03-10T08:05"]);
    expect(file.clockChanges).toMatchObject([{ kind: "skipped hour", rows: 2, fromLine: 3, toLine: 4 }]);
  });

  it("spring 2024: a clock that never changes is followed to the end, with no row doubled", () => {
    const file = read(
      simple([
        "2024-03-10 01:30",
        "2024-03-10 02:00",
        "2024-03-10 02:30",
        "2024-03-10 03:00",
        "2024-03-10 03:30",
      ]),
    );
    expect(utc(file)).toEqual([
      "2024-03-10T07:30",
      "2024-03-10T08:00",
      "2024-03-10T08:30",
      "2024-03-10T09:00",
      "2024-03-10T09:30",
    ]);
    expect([file.duplicates, file.gaps, file.reorderedRows]).toEqual([[], [], 0]);
    expect(file.clockChanges).toMatchObject([{ kind: "skipped hour", rows: 2 }]);
  });
});

describe("nothing is dropped silently", () => {
  it("doubles are listed with the line that was taken", () => {
    const file = read(
      "time,indoor temp F\n2024-05-01 00:00,70\n2024-05-01 00:05,71\n2024-05-01 00:05,71\n2024-05-01 00:10,72\n2024-05-01 00:10,99",
    );
    expect(file.duplicates).toEqual([
      { row: 4, sameTimeAs: 3, equal: true },
      { row: 6, sameTimeAs: 5, equal: false },
    ]);
    expect(channel(file, "indoorF")).toEqual([70, 71, 72]);
  });

  it("gaps say between what and how much", () => {
    const file = read(
      simple([
        "2024-05-01 00:00",
        "2024-05-01 00:05",
        "2024-05-01 00:10",
        "2024-05-01 01:00",
        "2024-05-01 01:05",
      ]),
    );
    expect(file.gaps).toEqual([
      { afterMs: Date.UTC(2024, 4, 1, 5, 10), beforeMs: Date.UTC(2024, 4, 1, 6, 0), missingSamples: 9 },
    ]);
  });

  it("a cell that cannot be is a gap with line, heading and reason; its row stays", () => {
    const file = read(
      "time,indoor_temp_F,indoor_RH\n2024-05-01 00:00,70,50\n2024-05-01 00:05,21.5,51\n2024-05-01 00:10,71,140\n2024-05-01 00:15,warm,52",
    );
    expect(file.samples.timeMs).toHaveLength(4);
    expect(channel(file, "indoorF")).toEqual([70, Number.NaN, 71, Number.NaN]);
    expect(channel(file, "indoorRhPct")).toEqual([50, 51, Number.NaN, 52]);
    expect(file.refused.map(({ row, heading }) => `${row} ${heading}`)).toEqual([
      "3 indoor_temp_F",
      "4 indoor_RH",
      "5 indoor_temp_F",
    ]);
    expect(file.refused[0]?.reason).toContain("it would fit as °C");
    expect(file.refused[2]?.reason).toContain('"warm" is not a number');
  });

  it("run time longer than its interval is refused, rounding by a second is not", () => {
    const file = read(
      "time,cool_1_sec,indoor_temp_F\n2024-05-01 00:00,301,70\n2024-05-01 00:05,600,70\n2024-05-01 00:10,300,70",
    );
    expect(channel(file, "firstStageShare")).toEqual([1, Number.NaN, 1]);
    expect(file.refused.map(({ row }) => row)).toEqual([3]);
  });
});

describe("what is no log is refused as a file, with a reason a person can act on", () => {
  it.each<[string, string | Uint8Array, string]>([
    ["nothing", "", "empty"],
    ["blanks", " \n\n ", "empty"],
    ["a workbook", Uint8Array.from([0x50, 0x4b, 0x03, 0x04, 20, 0, 6, 0]), "spreadsheet"],
    ["an old workbook", Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1]), "spreadsheet"],
    ["a compressed file", Uint8Array.from([0x1f, 0x8b, 8, 0]), "archive"],
    ["a picture", Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2]), "not text"],
    ["a PDF", Buffer.from("%PDF-1.7\n"), "not text"],
    ["text with zero bytes", "time,temp\n2024-05-01 00:00,\u0000", "not text"],
    ["a web page", "<!DOCTYPE html><html><body>Sign in</body></html>", "web page"],
    ["JSON", '{"time": ["2024-05-01 00:00"], "t": [1]}', "other text"],
    ["prose", "It was warm in the house all day", "no table"],
    ["a table without dates", "a,b\n1,2\n3,4", "no table"],
    ["unknown headings", "time,alpha,beta\n2024-05-01 00:00,1,2\n2024-05-01 00:05,1,2", "needs mapping"],
    ["one row", "time,indoor temp F\n2024-05-01 00:00,70", "unsuitable interval"],
    ["daily rows", "time,indoor temp F\n2024-05-13,70\n2024-05-14,70\n2024-05-15,70", "unsuitable interval"],
    [
      "rows every 10 s",
      simple(["2024-05-01 00:00:00", "2024-05-01 00:00:10", "2024-05-01 00:00:20"]),
      "unsuitable interval",
    ],
  ])("%s", (_, text, code) => {
    const found = refusal(text);
    expect(found.code).toBe(code);
    expect(found.reason.length).toBeGreaterThan(20);
  });

  it("an unknown zone, a mapping that does not fit, a mapping that is none", () => {
    const text = simple(["2024-05-01 00:00", "2024-05-01 00:05"]);
    expect(refusal(text, null, "Mars/Olympus").code).toBe("unknown zone");
    const { mapping } = read(text);
    const other = { ...mapping, columns: [{ heading: "gone", channel: "indoorF", unit: "°F" } as const] };
    expect(refusal(text, other)).toMatchObject({
      code: "wrong mapping",
      headings: ["time", "indoor_temp_F", "indoor_RH"],
    });
    const wrongUnit = {
      ...mapping,
      columns: [{ heading: "indoor_RH", channel: "indoorRhPct", unit: "°F" } as const],
    };
    expect(refusal(text, wrongUnit).code).toBe("wrong mapping");
  });
});
