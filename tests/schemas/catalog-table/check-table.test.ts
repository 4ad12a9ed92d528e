import { expect, test } from "vitest";
import {
  checkTable,
  fanLines,
  mappingProblems,
  readBlock,
  suggestMapping,
  type TableKind,
} from "@/lib/schemas/catalog-table";

/** Conversions: exact foot, inch and pound (NIST SP 811, recalled); the arithmetic stands beside each number. */
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

const HEAD = "Stage\tOutdoor DB °F\tEWB °F\tEDB °F\tAirflow cfm\tTotal Btu/h\tSensible Btu/h\tPower kW";

test("a maker's block with thousands separators is read as it stands", () => {
  const { problems, table } = read(
    "performance",
    `${HEAD}\n3 tons\t95\t67\t80\t1,200\t36,000\t27,000\t2.9\n`,
  );
  expect(problems).toEqual([]);
  expect(table.refused).toEqual([]);
  expect(table.performance).toEqual([
    {
      capacitySetting: "3 tons",
      mode: "cooling",
      outdoorDbF: 95,
      enteringWbF: 67,
      enteringDbF: 80,
      airflowCfm: 1200,
      totalBtuh: 36000,
      sensibleBtuh: 27000,
      powerW: 2900,
    },
  ]);
});

test("°C, kW, L/s and a decimal comma with semicolons", () => {
  const text =
    "Setting;Outdoor °C;Entering wet bulb °C;Entering dry bulb °C;Airflow (L/s);Total (kW);Sensible (kW)\nfull;35,0;19,4;26,7;566;10,5;7,9\n";
  const [row] = read("performance", text).table.performance;
  expect(row?.outdoorDbF).toBe(95); // 35 · 1.8 + 32
  expect(row?.enteringWbF).toBeCloseTo(66.92, 6); // 19.4 · 1.8 + 32
  expect(row?.enteringDbF).toBeCloseTo(80.06, 6); // 26.7 · 1.8 + 32
  expect(row?.airflowCfm).toBeCloseTo(1199.286, 2); // 566 L/s · 60 s ÷ 28.316847 L/ft³
  expect(row?.totalBtuh).toBeCloseTo(35827.49, 1); // 10.5 kW · 3,412.142
  expect(row?.sensibleBtuh).toBeCloseTo(26955.92, 1); // 7.9 kW · 3,412.142
});

test("temperatures without a unit in the heading: the values tell °C", () => {
  const text =
    "Stage\tOutdoor\tEWB\tEDB\tCFM\tTotal MBtu/h\tSensible MBtu/h\nfull\t35\t19\t27\t1200\t36\t27\n";
  const { mapping, table } = read("performance", text);
  expect([mapping.outdoorDbF?.unit, mapping.enteringWbF?.unit, mapping.enteringDbF?.unit]).toEqual([
    "°C",
    "°C",
    "°C",
  ]);
  expect(table.performance[0]).toMatchObject({ outdoorDbF: 95, totalBtuh: 36000, sensibleBtuh: 27000 });
});

test("holes, words, sensible above total and wet above dry bulb: each cell with line, column, reason and fix; the rest is kept", () => {
  const { table } = read(
    "performance",
    [
      HEAD,
      "3 tons\t95\t67\t80\t1200\t36000\t27000\t2.9",
      "3 tons\t85\t67\t80\t1200\t\t27000\t2.9",
      "3 tons\t105\t67\t80\t1200\t28,000\t30,000\t2.9",
      "3 tons\t75\t82\t80\t1200\t38000\t20000\t2.9",
      "3 tons\t75\t67\t80\tsee note\t38000\t27000\t2.9",
      "3 tons\t115\t67\t80\t1200\t33000\t26000\t",
    ].join("\n"),
  );
  expect(table.performance.map((row) => row.outdoorDbF)).toEqual([95, 115]);
  expect(table.performance[1]?.powerW).toBeNull();
  expect(table.refused.map(({ line, column, reason }) => `${line} ${column}: ${reason}`)).toEqual([
    "3 Total Btu/h: Total capacity is empty.",
    "4 Sensible Btu/h: Sensible 30,000 Btu/h is above the total of 28,000 Btu/h.",
    "5 EWB °F: Wet bulb 82 °F is above dry bulb 80 °F.",
    "6 Airflow cfm: “see note” is not a number.",
  ]);
  expect(table.refused.every(({ fix }) => fix.length > 10)).toBe(true);
});

test("rows in any order, in °C, with thousands separators and a hole: the same rows are kept, the same cell is named", () => {
  const head = "Stage\tOutdoor DB °C\tEWB °C\tEDB °C\tAirflow cfm\tTotal Btu/h\tSensible Btu/h";
  const rows = [
    "3 tons\t35\t20\t25\t1,200\t36,000\t27,000",
    "3 tons\t40\t20\t25\t1,200\t\t26,000",
    "3 tons\t30\t20\t25\t1,200\t37,500\t27,500",
    "3 tons\t45\t20\t25\t1,200\t25,000\t26,000",
  ];
  for (const order of [
    [0, 1, 2, 3],
    [3, 2, 1, 0],
    [2, 0, 3, 1],
  ]) {
    const { table } = read("performance", [head, ...order.map((at) => rows[at])].join("\n"));
    // 35 and 30 °C · 1.8 + 32
    expect(table.performance.map((row) => row.outdoorDbF).toSorted()).toEqual([86, 95]);
    const line = (at: number) => order.indexOf(at) + 2;
    expect(Object.fromEntries(table.refused.map((cell) => [cell.line, [cell.column, cell.reason]]))).toEqual({
      [line(1)]: ["Total Btu/h", "Total capacity is empty."],
      [line(3)]: ["Sensible Btu/h", "Sensible 26,000 Btu/h is above the total of 25,000 Btu/h."],
    });
  }
});

test("two tables for one model: the later row is refused and names the earlier line", () => {
  const rows = ["3 tons\t95\t67\t80\t1200\t36000\t27000\t2.9", "3 tons\t95\t67\t80\t1200\t35000\t27000\t2.9"];
  const { table, block } = read("performance", [HEAD, ...rows, HEAD].join("\n"));
  expect(table.goodRows).toBe(1);
  expect(table.refused[0]).toMatchObject({ line: 3, column: "Total Btu/h" });
  expect(table.refused[0]?.reason).toBe(
    "Line 2 gives another capacity at this condition: two tables for one model.",
  );
  expect(table.refused).toHaveLength(1);
  // The second table's headings are no row.
  expect(block.leftOut.map(({ line }) => line)).toEqual([4]);
});

test("heating rows need neither wet bulb nor sensible", () => {
  const { table } = read(
    "performance",
    `Mode,${HEAD.replaceAll("\t", ",")}\nheating,3 tons,17,,70,1200,21400,,2.7\n`,
  );
  expect(table.refused).toEqual([]);
  expect(table.performance[0]).toMatchObject({ mode: "heating", enteringWbF: null, sensibleBtuh: null });
});

test("a column whose unit nobody can know asks for it", () => {
  const { problems } = read(
    "performance",
    "Stage\tOutdoor\tEWB\tEDB\tCFM\tTotal\tSensible\nfull\t95\t67\t80\t1200\t36\t27\n",
  );
  expect(problems.map(({ quantity }) => quantity)).toEqual(["totalBtuh", "sensibleBtuh"]);
});

test.each(["furlong", "", "°F", "constructor", "__proto__"])(
  "a unit of no such quantity, “%s”, is asked for again",
  (unit) => {
    const { mapping } = read("fan", "Tap\tStatic in. w.c.\tCFM\n1\t0.1\t1000\n1\t0.5\t900\n");
    const { airflowCfm } = mapping;
    if (airflowCfm === undefined) throw new Error("The airflow's column was not found.");
    expect(mappingProblems("fan", { ...mapping, airflowCfm: { ...airflowCfm, unit } })).toMatchObject([
      { quantity: "airflowCfm" },
    ]);
  },
);

test("a fan table that rises with static, shuffled: the rising cell is named, the falling ones stay", () => {
  const { table } = read(
    "fan",
    "Tap\tESP in. w.c.\tCFM\nhigh\t0.5\t1,150\nhigh\t0.1\t1,250\nhigh\t0.3\t1,300\nhigh\t0.7\t1,080\nlow\t0.1\t700\n",
  );
  expect(table.fan.map(({ externalStaticInWc }) => externalStaticInWc)).toEqual([0.5, 0.1, 0.7]);
  expect(table.refused.map(({ line, column, reason }) => `${line} ${column}: ${reason}`)).toEqual([
    "4 CFM: 1,300 cfm at 0.3 in. w.c. is more than 1,250 cfm at 0.1 in. w.c.: airflow rises with static.",
    "6 Tap: “low” has one usable line; a curve needs two.",
  ]);
});

test("a first line far too low is refused alone, not all that stand above it", () => {
  const { table } = read(
    "fan",
    "Tap\tESP in. w.c.\tCFM\nhigh\t0.1\t125\nhigh\t0.3\t1,200\nhigh\t0.5\t1,150\nhigh\t0.7\t1,080\n",
  );
  expect(table.fan.map(({ airflowCfm }) => airflowCfm)).toEqual([1_200, 1_150, 1_080]);
  expect(table.refused.map(({ line, column, reason }) => `${line} ${column}: ${reason}`)).toEqual([
    "2 CFM: 1,200 cfm at 0.3 in. w.c. is more than 125 cfm at 0.1 in. w.c.: airflow rises with static.",
  ]);
});

test("of two wrong lines, one too high and one too low, both are refused and no other", () => {
  const cfm = [1_250, 1_200, 1_900, 1_150, 400, 1_100, 1_000];
  const block = cfm.map((value, index) => `high\t${0.1 * (index + 1)}\t${value}`).join("\n");
  const { table } = read("fan", `Tap\tESP in. w.c.\tCFM\n${block}\n`);
  expect(table.fan.map(({ airflowCfm }) => airflowCfm)).toEqual([1_250, 1_200, 1_150, 1_100, 1_000]);
});

test("a fan table in Pa and m³/h with the statics across", () => {
  const { table } = read("fan", "Setting,25,50,125\nA,2000,1900,1700\nB,,1500,1300\n");
  expect(table.refused).toEqual([]);
  expect(table.fan).toHaveLength(5);
});

test("where a block uses both decimal signs, the range of the quantity tells which is meant", () => {
  const fan = read("fan", "Tap\tESP in. w.c.\tCFM\nhigh\t0.1\t1,250\nhigh\t0,3\t1,240\nhigh\t0.55\t1200\n");
  expect(fan.table.fan.map(({ airflowCfm }) => airflowCfm)).toEqual([1250, 1240, 1200]);
  const rows = `${HEAD}\n3 tons\t95,5\t67\t80\t1200\t36000\t27000\t2.9\n3 tons\t95\t67\t80\t1200\t35000\t27000\t2,900 W\n`;
  // 2,900 W is 2.9 W or 2,900 W: only one of them runs a compressor.
  expect(read("performance", rows).table.performance[1]?.powerW).toBe(2900);
});

test.each([
  ["", /nothing here/],
  ["PK\u0003\u0004", /not text/],
  ["only one word", /No columns/],
  ["a\tb", /Only one line/],
])("%j is refused with what to do", (text, reason) => {
  const found = readBlock(text);
  expect("kind" in found && found.reason).toMatch(reason);
});
