import { existsSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { moistureLimits, moistureRules } from "@/lib/engineering/moisture";

describe("moisture rules", () => {
  it.each(Object.values(moistureRules))("$id names its test and its limits", (rule) => {
    expect(rule.id.startsWith("moisture.")).toBe(true);
    expect(existsSync(rule.checkedBy)).toBe(true);
    for (const key of rule.limits) expect(moistureLimits).toHaveProperty([key]);
  });

  it("ids are unique and every limit is read by a rule", () => {
    const rules = Object.values(moistureRules);
    expect(new Set(rules.map((rule) => rule.id)).size).toBe(rules.length);
    const read = new Set<string>(rules.flatMap((rule) => [...rule.limits]));
    for (const [key, limit] of Object.entries(moistureLimits)) {
      expect(read.has(key)).toBe(true);
      expect(limit.seed).toBeGreaterThanOrEqual(limit.min);
      expect(limit.seed).toBeLessThanOrEqual(limit.max);
    }
  });
});
