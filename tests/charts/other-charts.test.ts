import { describe, expect, test } from "vitest";
import { capacityAgainstAirflow } from "@/lib/charts/capacity-against-airflow";
import { clipped } from "@/lib/charts/clip";
import { hourByMonth } from "@/lib/charts/hour-by-month";
import { psychrometricChart } from "@/lib/charts/psychrometric-chart";
import { staticStack } from "@/lib/charts/static-stack";
import { thermostatTimeline } from "@/lib/charts/thermostat-timeline";

describe("the psychrometric chart", () => {
  const curve = [
    { dryBulbF: 40, grainsPerLb: 20 },
    { dryBulbF: 80, grainsPerLb: 100 },
    { dryBulbF: 120, grainsPerLb: 400 },
  ];
  const geometry = psychrometricChart({
    humidityCurves: [{ relativeHumidityPercent: 100, points: curve }],
    limit: null,
    states: [
      { key: "in", label: "entering", shape: "dot", tone: "b", dryBulbF: 75, grainsPerLb: 64 },
      { key: "out", label: "leaving", shape: "square", tone: "a", dryBulbF: 55, grainsPerLb: 58 },
    ],
    coilPath: [
      { dryBulbF: 75, grainsPerLb: 64 },
      { dryBulbF: 55, grainsPerLb: 58 },
    ],
    width: 600,
  });

  test("warmer is to the right, moister is higher", () => {
    const [entering, leaving] = geometry?.marks ?? [];
    expect(entering?.x).toBeGreaterThan(leaving?.x ?? Number.NaN);
    expect(entering?.y).toBeLessThan(leaving?.y ?? Number.NaN);
  });

  test("the coil's path joins the two marks", () => {
    const ends = geometry?.marks
      .map(({ x, y }) => `${Number(x.toFixed(1))},${Number(y.toFixed(1))}`)
      .join("L");
    expect(geometry?.paths.find((path) => path.key === "coil")?.d).toBe(`M${ends}`);
  });

  test("curves end exactly at the axes", () => {
    // Between 80 °F, 100 gr and 120 °F, 400 gr the curve meets 160 gr a fifth of the way, at 88 °F;
    // from 40 °F, 20 gr to 80 °F, 100 gr it passes 50 °F at 40 gr.
    expect(clipped(curve, [50, 100], [0, 160])).toEqual([
      { dryBulbF: 50, grainsPerLb: 40 },
      { dryBulbF: 80, grainsPerLb: 100 },
      { dryBulbF: 88, grainsPerLb: 160 },
    ]);
  });
});

describe("capacity against airflow", () => {
  const input = {
    series: [
      {
        key: "total",
        label: "total",
        tone: "ink",
        dashes: "solid",
        points: [
          { airflowCfm: 800, capacityBtuh: 31_000 },
          { airflowCfm: 1_200, capacityBtuh: 35_000 },
        ],
      },
      {
        key: "latent",
        label: "latent",
        tone: "a",
        dashes: "dashed",
        points: [{ airflowCfm: 800, capacityBtuh: 9_000 }],
      },
    ],
    loads: [{ key: "latent", label: "latent load", tone: "a", loadBtuh: 41_000 }],
    settings: [{ key: "low", label: "low", airflowCfm: 800, chosen: true }],
    width: 600,
  } as const;

  test("the axis begins at zero and holds the load as well", () => {
    const texts = capacityAgainstAirflow(input)
      ?.ticks.filter((tick) => tick.axis === "y")
      .map((tick) => tick.text);
    expect(texts?.[0]).toBe("0");
    expect(Number(texts?.at(-1)?.replace(",", ""))).toBeGreaterThanOrEqual(41_000);
  });

  test("the chosen setting marks each line that has a point there", () => {
    const marks = capacityAgainstAirflow(input)?.marks.filter((mark) => mark.shape === "lozenge");
    expect(marks?.map((mark) => mark.text)).toEqual(["total 31,000 Btu/h", "latent 9,000 Btu/h"]);
  });

  test("the table says what was not computed", () => {
    expect(capacityAgainstAirflow(input)?.tableRows).toEqual([
      ["800", "31,000", "9,000"],
      ["1,200", "35,000", "not computed"],
    ]);
  });

  test("no point, no picture", () => {
    expect(capacityAgainstAirflow({ ...input, series: [] })).toBeNull();
  });
});

describe("the static stack", () => {
  const geometry = staticStack({
    parts: [
      { key: "filter", label: "Filter", dropInWc: 0.2, measured: true },
      { key: "coil", label: "Coil", dropInWc: 0.25, measured: false },
    ],
    limit: { label: "limit", inWc: 0.5 },
    width: 600,
  });

  test("each drop begins where the last ended, and the sums add up", () => {
    expect(geometry?.tableRows).toEqual([
      ["Filter", "0.20", "0.20", "measured"],
      ["Coil", "0.25", "0.45", "not measured"],
    ]);
    const endOf = (key: string) =>
      /^M([\d.]+),[\d.]+H([\d.]+)/.exec(geometry?.paths.find((p) => p.key === key)?.d ?? "");
    expect(endOf("coil")?.[1]).toBe(endOf("filter")?.[2]);
    expect(endOf("total")?.[2]).toBe(endOf("coil")?.[2]);
  });

  test("what was not measured is drawn hollow", () => {
    expect(geometry?.paths.find((path) => path.key === "coil")?.kind).toBe("line");
    expect(geometry?.paths.find((path) => path.key === "filter")?.kind).toBe("solid");
  });
});

describe("the thermostat's timeline", () => {
  const geometry = thermostatTimeline({
    roomF: [
      { atMin: 0, dryBulbF: 75 },
      { atMin: 10, dryBulbF: 76 },
      { atMin: 20, dryBulbF: null },
      { atMin: 30, dryBulbF: 75 },
      { atMin: 40, dryBulbF: 74 },
    ],
    setpointF: [
      { atMin: 0, setpointF: 75 },
      { atMin: 20, setpointF: 77 },
    ],
    runs: [
      { fromMin: 10, toMin: 20, stage: "first stage" },
      { fromMin: 20, toMin: 30, stage: "second stage" },
    ],
    endMin: 40,
    gapAfterMin: 15,
    width: 600,
  });

  test("a missing temperature cuts the line", () => {
    expect(geometry?.paths.filter((path) => path.key.startsWith("room-"))).toHaveLength(2);
  });

  test("the setpoint changes at once, not along a slope", () => {
    const d = geometry?.paths.find((path) => path.key === "setpoint")?.d ?? "";
    const corners = d
      .slice(1)
      .split("L")
      .map((pair) => pair.split(",").map(Number));
    for (const [index, [x, y]] of corners.entries()) {
      const next = corners[index + 1];
      if (next !== undefined) expect(next[0] === x || next[1] === y).toBe(true);
    }
    expect(corners.length).toBeGreaterThan(3);
  });

  test("second stage stands higher than first", () => {
    const topOf = (key: string) =>
      Number(/^M[\d.]+,([\d.]+)/.exec(geometry?.paths.find((p) => p.key === key)?.d ?? "")?.[1]);
    expect(topOf("run-1")).toBeLessThan(topOf("run-0"));
  });
});

test("a day of the thermostat stands on the clock", () => {
  const day = thermostatTimeline({
    roomF: [
      { atMin: 0, dryBulbF: 75 },
      { atMin: 1_439, dryBulbF: 76 },
    ],
    setpointF: [{ atMin: 0, setpointF: 75 }],
    runs: [{ fromMin: 845, toMin: 900, stage: "first stage" }],
    endMin: 1_440,
    gapAfterMin: 2_000,
    isDay: true,
    width: 420,
  });
  const feet = day?.ticks.filter(({ axis }) => axis === "x").map(({ text }) => text);
  expect(feet).toEqual(["0:00", "6:00", "12:00", "18:00", "24:00"]);
  expect(day?.tableRows[0]).toEqual(["14:05", "15:00", "first stage"]);
});

test("hours by month of a typical year have no year", () => {
  const cells = [
    { month: 0, hour: 4, meanRhPct: 48 },
    { month: 7, hour: 4, meanRhPct: 63 },
  ];
  const typical = hourByMonth({ width: 600, cells, limitPct: 60, isTypicalYear: true });
  expect(typical?.tableRows.map(([month]) => month)).toEqual(["Jan", "Aug"]);
  expect(typical?.textAlternative).toContain("4:00 in Aug with 63 %");
  expect(hourByMonth({ width: 600, cells, limitPct: 60 })?.tableRows[0]?.[0]).toBe("Jan 1970");
});
