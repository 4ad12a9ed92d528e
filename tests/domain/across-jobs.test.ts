import { expect, test } from "vitest";
import { CHANCE_LIMIT, compared, comparisonInWords, contrasts } from "@/lib/domain/across-jobs";
import { valueInWords } from "@/lib/domain/across-jobs-names";

const group = (name: string, jobs: number, complaints: number) => ({ value: name, name, jobs, complaints });

test("people are listed by name, and one with nine jobs has no share", () => {
  const groups = compared("techId", [group("Zoe", 9, 9), group("Abe", 10, 0)]);
  expect(groups.map(({ name, share }) => [name, share?.share ?? null])).toEqual([
    ["Abe", 0],
    ["Zoe", null],
  ]);
});

test("settings come in the order of how surely complaints are common: 1 of 1 is less sure than 8 of 10", () => {
  // Lower limits by hand: 1 of 1: 1/(1 + 3.8415) = 0.207; 8 of 10: 0.490 (Wilson).
  const groups = compared("capacitySetting", [group("one", 1, 1), group("ten", 10, 8)]);
  expect(groups.map(({ name }) => name)).toEqual(["ten", "one"]);
});

test("says in words that all complaints share a setting, but not of two complaints and never of people", () => {
  const by = "secondStageAirflowSetting" as const;
  const three = compared(by, [group("tap 4", 4, 3), group("tap 2", 5, 0)]);
  expect(comparisonInWords(by, three)).toContain("All 3 jobs");
  expect(comparisonInWords(by, three)).toContain("tap 4. 1 other job has it too; 5 jobs without it");
  const two = compared(by, [group("tap 4", 4, 2), group("tap 2", 5, 0)]);
  expect(comparisonInWords(by, two)).toContain("2 of 9 jobs");
  const people = compared("techId", [group("Zoe", 12, 5), group("Abe", 12, 0)]);
  expect(comparisonInWords("techId", people)).not.toContain("All");
});

test("the sentence says what chance has to do with it, and nothing where nothing is shared", () => {
  const by = "secondStageAirflowSetting" as const;
  // Of C(9,3) = 84 ways to place three complaints on nine jobs, C(4,3) = 4 place all on these four: 1 in 21.
  const sure = compared(by, [group("tap 4", 4, 3), group("tap 2", 5, 0)]);
  expect(comparisonInWords(by, sure)).toContain("By chance alone they would all be there 1 time in 21.");
  // C(10,3) = 120 of C(13,3) = 286: 0.42, 1 in 2.
  const common = compared(by, [group("tap 4", 10, 3), group("tap 2", 3, 0)]);
  expect(comparisonInWords(by, common)).toContain("That may be chance: it would come about 1 time in 2.");
  // All jobs have it: then those with a complaint have it too.
  expect(comparisonInWords(by, compared(by, [group("tap 4", 9, 3)]))).not.toContain("All 3");
  // Not recorded is no setting, and such jobs are none without it.
  const unknown = { ...group("not recorded", 5, 3), value: null };
  expect(comparisonInWords(by, compared(by, [unknown, group("tap 2", 5, 0)]))).not.toContain("All 3");
  const beside = { ...group("not recorded", 6, 0), value: null };
  expect(comparisonInWords(by, compared(by, [group("tap 4", 4, 3), group("tap 2", 5, 0), beside]))).toContain(
    "5 jobs without it have none",
  );
});

test("of two settings the one whose value holds all complaints comes first, and is more than chance", () => {
  const [first, second] = contrasts({
    secondStageAirflowSetting: [group("tap 4", 12, 9), group("tap 2", 30, 0)],
    fanRunOnSeconds: [group("60", 20, 5), group("0", 22, 4)],
    capacitySetting: [group("2 tons", 42, 9)],
  });
  expect(first).toMatchObject({
    by: "secondStageAirflowSetting",
    group: { name: "tap 4" },
    rest: { jobs: 30, complaints: 0 },
  });
  expect(first?.chance).toBeLessThan(CHANCE_LIMIT);
  expect(second).toMatchObject({ by: "fanRunOnSeconds", group: { name: "60" } });
  expect(second?.chance).toBeGreaterThan(CHANCE_LIMIT);
});

test("three jobs are no law: three of three against none of three may be chance once several settings are looked at", () => {
  const found = contrasts({
    secondStageAirflowSetting: [group("tap 4", 3, 3), group("tap 2", 3, 0)],
    ...Object.fromEntries(
      (["capacitySetting", "fanRunOnSeconds", "fanBetweenCalls", "stepBackToFirstStage"] as const).map(
        (by) => [by, [group("a", 3, 2), group("b", 3, 1)]],
      ),
    ),
  });
  expect(found[0]?.chance).toBeGreaterThan(CHANCE_LIMIT);
});

test("a setting not recorded anywhere, or the same everywhere, is not among what goes with complaints", () => {
  expect(
    contrasts({ capacitySetting: [{ value: null, name: "not recorded", jobs: 5, complaints: 5 }] }),
  ).toEqual([]);
  expect(contrasts({ capacitySetting: [group("2 tons", 5, 5)] })).toEqual([]);
});

test.each([
  ["secondStageCfmPerTon", "275", "275 to 300"],
  ["externalStaticInWc", "5", "0.5 to 0.6"],
  ["stepBackToFirstStage", "false", "no"],
  ["season", "2", "Summer (June to August)"],
  ["startupMonth", "12", "December"],
  ["equipment", "id", "Maker M1"],
  ["builder", null, "not recorded"],
] as const)("%s %s reads %s", (by, value, words) => {
  expect(valueInWords(by, value, new Map([["id", "Maker M1"]]))).toBe(words);
});
