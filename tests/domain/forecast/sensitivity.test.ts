import { expect, test } from "vitest";
import { sensitivityWords } from "@/lib/domain/forecast";
import type { SearchFound, SettingSensitivity } from "@/lib/engineering/simulation";

const turned = (
  axis: SettingSensitivity["axis"],
  hours: Readonly<Record<string, number>>,
): SettingSensitivity => ({
  axis,
  choices: Object.entries(hours).map(
    ([name, hoursAboveLimit]) => ({ names: { [axis]: name }, hoursAboveLimit }) as unknown as SearchFound,
  ),
  spreadHours: Math.max(...Object.values(hours)) - Math.min(...Object.values(hours)),
});

test("which setting matters most is said in words, the others after it, and what does not matter last", () => {
  expect(
    sensitivityWords([
      turned("ventilation", { continuous: 300, "at night": 310 }),
      turned("airflow", { low: 150, full: 1_900 }),
      turned("capacity", { "2 tons": 150, "3 tons": 700 }),
      turned("dehumidifier", { none: 150 }),
    ]),
  ).toEqual([
    "Airflow setting matters most: “low” leaves 150 h, “full” leaves 1,900 h, 1,750 h apart.",
    "Capacity setting: “2 tons” leaves 150 h, “3 tons” leaves 700 h, 550 h apart.",
    "Ventilation: less than a day's hours in the year, whichever is chosen.",
  ]);
});
