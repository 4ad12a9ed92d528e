import { expect, test } from "vitest";
import { type VerdictSharesGroup, verdictShares } from "@/lib/charts/verdict-shares";

const groups: readonly VerdictSharesGroup[] = [
  { name: "Oak Homes", jobs: 10, counts: { meets: 5, "falls short": 3 } },
  { name: "Bay Builders", jobs: 4, counts: { meets: 4 } },
];

test("a bar's parts are shares of all its group's jobs, and what is not judged stays empty", () => {
  const chart = verdictShares({ width: 600, groups });
  // From 4 to 596: 592 units for ten jobs; three fall short, then five meet: 4 + 177.6 = 181.6, 181.6 + 296 = 477.6.
  expect(chart?.paths.find(({ key }) => key === "0 falls short")?.d).toMatch(/^M4,.*H181\.6V/);
  expect(chart?.paths.find(({ key }) => key === "0 meets")?.d).toMatch(/^M181\.6,.*H477\.6V/);
  expect(chart?.paths.find(({ key }) => key === "1 meets")?.d).toMatch(/H596V/);
  expect(chart?.tableHead).toEqual([
    "Group",
    "Jobs",
    "falls short",
    "can't tell",
    "not measured",
    "meets",
    "not judged",
  ]);
  expect(chart?.tableRows[0]).toEqual(["Oak Homes", "10", "3", "0", "0", "5", "2"]);
  expect(chart?.textAlternative).toContain("Oak Homes: 3 of 10 jobs");
});

test("no group is no picture, and none that falls short is said", () => {
  expect(verdictShares({ width: 600, groups: [] })).toBeNull();
  expect(verdictShares({ width: 340, groups: groups.slice(1) })?.textAlternative).toBe(
    "No job of any group falls short.",
  );
});
