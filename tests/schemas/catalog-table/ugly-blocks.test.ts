import { expect, test } from "vitest";
import {
  cellsToFill,
  checkTable,
  fanLines,
  fillDown,
  mappingProblems,
  readBlock,
  renameSetting,
  strangeSettings,
  suggestMapping,
  type TableKind,
} from "@/lib/schemas/catalog-table";

/** Blocks as spreadsheets give them. Expected numbers are those printed in the block; conversions stand beside them. */
function read(kind: TableKind, text: string) {
  const found = readBlock(text);
  if ("kind" in found) throw new Error(found.reason);
  const block = kind === "fan" ? fanLines(found) : found;
  const mapping = suggestMapping(kind, block);
  return {
    block,
    mapping,
    problems: mappingProblems(kind, mapping),
    table: checkTable(kind, block, mapping),
  };
}

const HEAD = "Stage\tOutdoor DB °F\tEWB °F\tEDB °F\tCFM\tTotal Btu/h\tSensible Btu/h\tkW";

test("three heading lines with merged cells, °C, kW, L/s, decimal commas, a blank line and a footnote: both stages", () => {
  const { problems, table, block } = read(
    "performance",
    `Cooling performance (kW)\t\t\t\t\t\t\t\t\t
Outdoor temperature\tEntering air\t\tAirflow\tStage 2\t\t\tStage 1\t\t
\tWB\tDB\t\tTotal\tSensible\tPower\tTotal\tSensible\tPower
°C\t°C\t°C\tL/s\tkW\tkW\tkW\tkW\tkW\tkW
35\t19,4\t26,7\t566\t10,2\t7,6\t2,7\t7,1\t5,3\t1,8

46*\t19,4\t26,7\t566\t9,1\t7,2\t3,3\t6,2\t5,0\t2,2

* outside the guaranteed range`,
  );
  expect(problems).toEqual([]);
  expect(table.refused).toEqual([]);
  expect(
    table.performance.map((row) => [row.capacitySetting, row.outdoorDbF, row.totalBtuh, row.powerW]),
  ).toEqual([
    // 35 and 46 °C · 1.8 + 32; 10.2, 7.1, 9.1 and 6.2 kW · 3,412.142
    ["Stage 2", 95, 34803.85, 2700],
    ["Stage 1", 95, 24226.21, 1800],
    ["Stage 2", 114.8, 31050.49, 3300],
    ["Stage 1", 114.8, 21155.28, 2200],
  ]);
  expect(block.leftOut.map(({ line }) => line)).toEqual([9]);
});

test("outdoor temperatures across the top become a column", () => {
  const { problems, table } = read(
    "performance",
    `Capacity setting\tEWB\tEDB\tCFM\tOutdoor ambient 85\t\t\tOutdoor ambient 95\t\t
\t\t\t\tTotal\tSens\tkW\tTotal\tSens\tkW
High\t67\t80\t1200\t36000\t26000\t2.4\t34200\t25100\t2.7`,
  );
  expect(problems).toEqual([]);
  expect(table.performance.map((row) => [row.outdoorDbF, row.totalBtuh, row.sensibleBtuh])).toEqual([
    [85, 36000, 26000],
    [95, 34200, 25100],
  ]);
});

test("two tables in one paste, parted by their titles: the title is the setting", () => {
  const head = "Outdoor DB °F,EWB °F,EDB °F,CFM,Total,Sensible,kW";
  const { problems, table, block } = read(
    "performance",
    `Stage: High\n${head}\n95,67,80,1200,34200,25100,2.7\n\nStage: Low\n${head}\n95,67,80,900,24200,18100,1.8\n`,
  );
  expect(problems).toEqual([]);
  expect(table.performance.map((row) => [row.capacitySetting, row.totalBtuh])).toEqual([
    ["High", 34200],
    ["Low", 24200],
  ]);
  expect(block.leftOut.map(({ line }) => line)).toEqual([5, 6]);
});

test("a second table with other columns is never read under the first one's headings", () => {
  const found = readBlock(
    `${HEAD}\nHigh\t95\t67\t80\t1200\t34200\t25100\t2.7\n\nStage\tODB °F\tCFM\tSensible\tTotal\nHigh\t95\t1200\t25100\t34200\n`,
  );
  expect("kind" in found && found.reason).toBe(
    "Line 4 begins another table with other columns. Paste one table at a time.",
  );
});

test.each([
  ["34,200¹", 34200],
  ["34,200 (1)", 34200],
  ["34,200†", 34200],
  ["34,200*", 34200],
])("%s: the mark of a footnote is no digit", (cell, total) => {
  const { table } = read("performance", `${HEAD}\nHigh\t95\t67\t80\t1,200\t${cell}\t25,100\t2.7\n`);
  expect(table.performance.map(({ totalBtuh }) => totalBtuh)).toEqual([total]);
});

test("cells that merged ones leave empty are named, and filled when asked for; a capacity is never filled", () => {
  const { table, block, mapping } = read(
    "performance",
    `${HEAD}\nHigh\t95\t67\t80\t1200\t34200\t25100\t2.7\n\t\t63\t80\t1200\t32500\t28100\t2.7\n\t105\t67\t80\t1200\t\t24500\t3.0\n`,
  );
  expect(table.goodRows).toBe(1);
  const filled = checkTable(
    "performance",
    fillDown(block, cellsToFill("performance", block, mapping)),
    mapping,
  );
  expect(filled.performance.map((row) => [row.capacitySetting, row.outdoorDbF, row.enteringWbF])).toEqual([
    ["High", 95, 67],
    ["High", 95, 63],
  ]);
  expect(filled.refused.map(({ line, reason }) => [line, reason])).toEqual([[4, "Total capacity is empty."]]);
});

test("a fan table with the settings across and dashes where the fan cannot go", () => {
  const { block, mapping } = read(
    "fan",
    "ESP (in. w.c.)\tLow\tMedium\tHigh\n0.1\t820\t1020\t1310\n0.3\t775\t970\t1245\n0.5\t---\t905\t1160\n",
  );
  const table = checkTable("fan", block, {
    ...mapping,
    airflowCfm: { column: 2, constant: "", unit: "cfm" },
  });
  expect(table.fan.filter(({ airflowSetting }) => airflowSetting === "Low")).toEqual([
    { airflowSetting: "Low", externalStaticInWc: 0.1, airflowCfm: 820, powerW: null },
    { airflowSetting: "Low", externalStaticInWc: 0.3, airflowCfm: 775, powerW: null },
  ]);
  expect(table.refused.map(({ line, reason }) => [line, reason])).toEqual([[4, "Airflow is empty."]]);
});

test("thousands with a point and no decimals anywhere: what a fan can move tells", () => {
  const { table } = read(
    "fan",
    "Airflow setting;External static (Pa);Airflow (m³/h)\nA;25;1.390\nA;75;1.320\n",
  );
  // 1,390 m³/h · 1,000 L ÷ 28.316847 L/ft³ ÷ 60 = 818.13 cfm; 1.39 m³/h would be 0.8 cfm.
  expect(table.fan.map(({ airflowCfm }) => Math.round(airflowCfm))).toEqual([818, 777]);
});

test("rows named by no setting of the model are said, and go under the one that is chosen", () => {
  const settings = [{ name: "full", firstStageTable: "full, first stage" }];
  const rows = ["High\t95", "Low\t95"].map((start) => `${start}\t67\t80\t1200\t34200\t25100\t2.7`);
  const { block, mapping } = read("performance", [HEAD, ...rows].join("\n"));
  expect(strangeSettings(block, mapping, settings)).toEqual(["High", "Low"]);
  const one = renameSetting(block, mapping, "High", "full");
  const both = renameSetting(one.block, one.mapping, "Low", "full, first stage");
  expect(strangeSettings(both.block, both.mapping, settings)).toEqual([]);
  expect(
    checkTable("performance", both.block, both.mapping).performance.map((row) => row.capacitySetting),
  ).toEqual(["full", "full, first stage"]);
  const constant = { ...mapping, capacitySetting: { column: null, constant: "High", unit: null } };
  expect(strangeSettings(block, constant, settings)).toEqual(["High"]);
  const renamed = renameSetting(block, constant, "High", "full");
  expect(strangeSettings(renamed.block, renamed.mapping, settings)).toEqual([]);
});
