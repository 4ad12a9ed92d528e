import { existsSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { equipmentLimits, equipmentRules } from "@/lib/engineering/equipment";

describe("equipment rules", () => {
  it.each(Object.values(equipmentRules))("$id names its test and its limits", (rule) => {
    expect(rule.id.startsWith("equipment.")).toBe(true);
    expect(existsSync(rule.checkedBy)).toBe(true);
    for (const key of rule.limits) expect(equipmentLimits).toHaveProperty([key]);
  });

  it("ids are unique and every limit is read by a rule", () => {
    const rules = Object.values(equipmentRules);
    expect(new Set(rules.map((rule) => rule.id)).size).toBe(rules.length);
    const read = new Set<string>(rules.flatMap((rule) => [...rule.limits]));
    for (const [key, limit] of Object.entries(equipmentLimits)) {
      expect(read.has(key)).toBe(true);
      expect(limit.seed).toBeGreaterThanOrEqual(limit.min);
      expect(limit.seed).toBeLessThanOrEqual(limit.max);
    }
  });
});
