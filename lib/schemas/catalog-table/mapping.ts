import { z } from "zod";
import { decimalSignOf, readNumberCell } from "./number-cell";
import { quantitiesOf, type TableKind, type TableQuantity } from "./quantities";
import type { Block } from "./read-block";
import { ourUnit, readUnit, type UnitFamily, unitsOf } from "./units";

/**
 * Where each of our quantities comes from: a column of the block, by its place, or one value for the whole table.
 * A quantity not named is not in the block. `unit` is what a number is in; `null` until a person has said it.
 */
export const tableMappingSchema = z.record(
  z.string().max(40),
  z.strictObject({
    column: z.number().int().min(0).max(100).nullable(),
    constant: z.string().max(100),
    unit: z.string().max(20).nullable(),
  }),
);
export type TableMapping = z.infer<typeof tableMappingSchema>;
export type MappedQuantity = TableMapping[string];

/** Words in headings, the most telling first; a heading with a word of `not` is something else. */
const HEADINGS: Readonly<Record<string, { readonly is: readonly RegExp[]; readonly not?: RegExp }>> = {
  capacitySetting: {
    is: [/capacity setting|^stage|^table|^setting|compressor (speed|stage)/, /^title above/],
    not: /total|sensible|power/,
  },
  mode: { is: [/^mode|operation/] },
  outdoorDbF: { is: [/outdoor|ambient|outside|\boat\b|\bodb\b|condenser/] },
  enteringWbF: { is: [/wet ?bulb|\be?wb\b|\bidwb\b/], not: /outdoor|leaving/ },
  enteringDbF: {
    is: [/(entering|indoor|return|room).*dry|\bedb\b|\bidb\b|dry ?bulb|\bdb\b/],
    not: /outdoor|ambient|outside|leaving/,
  },
  airflowSetting: { is: [/setting|\btap\b|speed|profile/, /^title above/], not: /static/ },
  externalStaticInWc: { is: [/static|\besp\b|pressure/] },
  airflowCfm: { is: [/air ?flow|\bcfm\b|air volume|l\/s|m3\/h/] },
  totalBtuh: { is: [/total|\btot\b/, /capacity|\btc\b|\bheating\b/], not: /sensible|ratio|setting|power/ },
  sensibleBtuh: { is: [/sensible|\bsens\b|\bsc\b|\bshc\b/], not: /ratio|\bshr\b|s\/t/ },
  powerW: { is: [/power|watt|\bkw\b|\bw\b|input/], not: /total cap|sensible/ },
};

/** A proposal from headings and values, for a person to look over. */
export function suggestMapping(kind: TableKind, block: Block): TableMapping {
  const headings = block.headings.map((heading) => heading.normalize("NFKC").toLowerCase());
  const taken = new Set<number>();
  const mapping: TableMapping = {};
  for (const quantity of quantitiesOf(kind)) {
    const column = columnFor(quantity, headings, taken);
    if (column === null) continue;
    taken.add(column);
    mapping[quantity.key] = { column, constant: "", unit: unitFor(quantity, block, column) };
  }
  if (kind === "performance" && mapping.mode === undefined) {
    const heats = mapping.enteringWbF === undefined && headings.some((heading) => heading.includes("heat"));
    mapping.mode = { column: null, constant: heats ? "heating" : "cooling", unit: null };
  }
  return withMetricOutdoors(mapping, block);
}

function columnFor(
  quantity: TableQuantity,
  headings: readonly string[],
  taken: ReadonlySet<number>,
): number | null {
  const words = HEADINGS[quantity.key];
  for (const pattern of words?.is ?? []) {
    const found = headings.findIndex(
      (heading, index) => !taken.has(index) && pattern.test(heading) && !words?.not?.test(heading),
    );
    if (found !== -1) return found;
  }
  return null;
}

function unitFor({ family }: TableQuantity, block: Block, column: number): string | null {
  if (family === null) return null;
  return (
    unitInHeading(block.headings[column] ?? "", family) ??
    unitByValues(family, valuesOf(block, column, family))
  );
}

function unitInHeading(heading: string, family: UnitFamily): string | null {
  const parts = heading.split(/[\s,;()[\]]+/).filter((part) => part !== "");
  const ends = [
    /[([]([^)\]]+)[)\]]/.exec(heading)?.[1] ?? "",
    parts.slice(-2).join(""),
    ...parts.toReversed(),
  ];
  for (const part of ends) {
    const unit = readUnit(part, family);
    if (unit !== null) return unit;
  }
  return null;
}

function valuesOf(block: Block, column: number, family: UnitFamily): readonly number[] {
  const cells = block.rows.map(({ cells }) => cells[column] ?? "");
  const sign = decimalSignOf(cells) ?? "point";
  return cells
    .flatMap((cell) => {
      const read = readNumberCell(cell, sign, family);
      return read.kind === "number" ? [read.value] : [];
    })
    .sort((a, b) => a - b);
}

/** By size, where it leaves no doubt; otherwise a person must say. */
function unitByValues(family: UnitFamily, values: readonly number[]): string | null {
  const middle = values[Math.floor(values.length / 2)];
  if (middle === undefined) return null;
  if (family === "temperature") return middle < 45 ? "°C" : "°F";
  if (family === "capacity") return middle > 1_000 ? "Btu/h" : null;
  if (family === "power") return middle > 100 ? "W" : "kW";
  if (family === "pressure") return middle <= 2 ? "in. w.c." : middle >= 10 ? "Pa" : null;
  return null;
}

/** Outdoor air of 35 is warm in °C and cold in °F: the entering air, which is never that cold, decides. */
function withMetricOutdoors(mapping: TableMapping, block: Block): TableMapping {
  const { outdoorDbF, enteringWbF, enteringDbF } = mapping;
  const entering = enteringDbF?.unit ?? enteringWbF?.unit ?? null;
  if (outdoorDbF === undefined || entering === null) return mapping;
  const said = unitInHeading(block.headings[outdoorDbF.column ?? -1] ?? "", "temperature");
  if (said !== null) return mapping;
  return { ...mapping, outdoorDbF: { ...outdoorDbF, unit: entering } };
}

export type MappingProblem = { readonly quantity: string; readonly message: string };

/** What must be said before the table can be read. */
export function mappingProblems(kind: TableKind, mapping: TableMapping): readonly MappingProblem[] {
  const heatingOnly = mapping.mode?.column === null && mapping.mode.constant === "heating";
  const used = new Map<number, string>();
  return quantitiesOf(kind).flatMap((quantity): MappingProblem[] => {
    const mapped = mapping[quantity.key];
    const say = (message: string) => [{ quantity: quantity.key, message: `${quantity.label}: ${message}` }];
    if (mapped === undefined || (mapped.column === null && mapped.constant.trim() === "")) {
      const needed = quantity.need === "always" || (quantity.need === "cooling" && !heatingOnly);
      return needed ? say("choose its column, or enter one value for the whole table.") : [];
    }
    if (quantity.family !== null && !unitsOf(quantity.family).includes(mapped.unit ?? "")) {
      return say(`choose its unit; the catalog keeps ${ourUnit(quantity.family)}.`);
    }
    if (mapped.column === null) return [];
    const other = used.get(mapped.column);
    used.set(mapped.column, quantity.label);
    return other === undefined ? [] : say(`the same column is chosen for “${other}”. Choose another.`);
  });
}
