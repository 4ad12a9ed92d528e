import { describe, expect, test } from "vitest";
import type { Rule } from "@/lib/engineering/findings";
import { type EngineeringFunction, engineeringFunctions } from "./engineering-functions";
import { projectFile } from "./source-files";

const functions = engineeringFunctions();
const CERTAINTY =
  /\((?:[^()]*\b)?(?:published|computed|recalled|unverified|physics|from memory|practice|maker's data)\b[^()]*\)|common practice, no source/;

/*
 * What a folder's index exports is what others build on: its docstring says everything. An exported function inside a folder
 * says what concerns numbers: units and ranges of the numbers it takes, the unit it returns, when it refuses, and, where it turns
 * numbers into numbers, the source of the equation. Findings, figures and texts rest on their rule, which names its source.
 */
describe("docstrings of lib/engineering", () => {
  test("the parser finds the functions and knows which can refuse", () => {
    const known = (name: string) => functions.find((one) => one.name === name);
    expect(functions.length).toBeGreaterThan(100);
    expect(known("moistAir")).toMatchObject({ isPublic: true, canRefuse: true, returns: "other" });
    expect(known("moistEnthalpy")).toMatchObject({ isPublic: false, canRefuse: false, returns: "numbers" });
    expect(known("standardPressurePsia")).toMatchObject({ canRefuse: true, returns: "numbers" });
  });

  test("every exported function says what it means", () => {
    expect(offenders((one) => (one.doc?.meaning ?? "").length < 10)).toEqual([]);
  });

  test("every parameter is described, and where it holds numbers, with a range or where the range stands", () => {
    const wrong = functions.flatMap((one) =>
      one.parameters
        .filter((parameter) => (one.isPublic || parameter.holdsNumbers) && !isDescribed(one, parameter))
        .map((parameter) => `${one.file} ${one.name}: ${parameter.name}`),
    );
    expect(wrong).toEqual([]);
  });

  test("no docstring describes a parameter that is not there", () => {
    const wrong = functions.flatMap((one) =>
      (one.doc?.params ?? [])
        .filter((given) => !one.parameters.some(({ name }) => name === "" || name === given.name))
        .map((given) => `${one.file} ${one.name}: ${given.name}`),
    );
    expect(wrong).toEqual([]);
  });

  test("what it returns is described", () => {
    const returns = (one: EngineeringFunction) =>
      one.returns === "numbers" || (one.isPublic && one.returns !== "nothing");
    expect(offenders((one) => returns(one) && (one.doc?.returns ?? "").length < 3)).toEqual([]);
  });

  test("a function that can refuse says so", () => {
    expect(offenders((one) => one.canRefuse && (one.doc?.throws.length ?? 0) === 0)).toEqual([]);
  });

  test("every function of an index and every equation names its source and how certain it is", () => {
    const isEquation = (one: EngineeringFunction) =>
      one.returns === "numbers" && one.parameters.some((parameter) => parameter.holdsNumbers);
    const isSaidByIndex = (one: EngineeringFunction) =>
      one.isPublic && one.returns !== "nothing" && one.returns !== "words";
    const source = (one: EngineeringFunction) => one.doc?.see.join(" ").replace(/\s+/g, " ") ?? "";
    expect(
      offenders((one) => (isSaidByIndex(one) || isEquation(one)) && !CERTAINTY.test(source(one))),
    ).toEqual([]);
  });
});

describe("rules of lib/engineering", () => {
  const folders = [
    ...new Set(functions.filter((one) => one.isPublic).map((one) => one.file.split("/")[2] ?? "")),
  ];

  test.each(folders)("%s states its sources in its rules.ts", async (folder) => {
    const found: Record<string, unknown> = await import(`../../lib/engineering/${folder}/rules.ts`);
    const rules = Object.values(found[`${folder}Rules`] ?? {}) as readonly Rule[];
    expect(rules.length).toBeGreaterThan(0);
    for (const rule of rules) {
      expect(rule.id.startsWith(`${folder}.`)).toBe(true);
      expect(rule.basis.source.length, rule.id).toBeGreaterThan(10);
      expect(projectFile(rule.checkedBy).length, rule.id).toBeGreaterThan(100);
    }
  });
});

function offenders(wrong: (one: EngineeringFunction) => boolean): readonly string[] {
  return functions.filter(wrong).map((one) => `${one.file} ${one.name}`);
}

function isDescribed(
  one: EngineeringFunction,
  parameter: EngineeringFunction["parameters"][number],
): boolean {
  const text = (one.doc?.params ?? [])
    .filter(({ name }) => parameter.name === "" || name === parameter.name)
    .map((given) => given.text)
    .join(" ");
  return text.length > 2 && (!parameter.holdsNumbers || /\d|\{@link |\bas `|ranges? (at|of)/i.test(text));
}
