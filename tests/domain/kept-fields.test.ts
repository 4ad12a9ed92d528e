import { expect, test } from "vitest";
import { defineFields, number, text } from "@/lib/domain/fields";
import { keptFields } from "@/lib/domain/kept-fields";

const fields = defineFields({
  airflow: number({ label: "Airflow", unit: "cfm", min: 100, max: 2_000, decimals: 0, group: "A" }),
  heat: number({ label: "Heat", unit: "kW", min: 0, max: 30, decimals: 0, group: "A" }),
  note: text({ label: "Note", group: "A" }),
});

test("what can be read is kept, what cannot keeps its saved value and says why", () => {
  const saved = { airflow: 800, heat: 5, note: "old" };
  const kept = keptFields(fields, saved, { airflow: "1,250 cfm", heat: "5 tons", note: "" });
  expect(kept.values).toEqual({ airflow: 1_250, heat: 5, note: null });
  expect(kept.problems.map((one) => one.field)).toEqual(["heat"]);
  expect(kept.problems[0]?.message).toContain("another unit");
  expect(keptFields(fields, saved, { airflow: "9000" }).values).toEqual({
    airflow: 800,
    heat: null,
    note: null,
  });
});
