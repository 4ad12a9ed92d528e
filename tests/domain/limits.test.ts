import { describe, expect, test } from "vitest";
import { LIMIT_KEYS, limitDefinition, limitProblems, limitsInForce } from "@/lib/domain/limits";
import { ImpossibleStateError } from "@/lib/engineering/errors";

describe("the limits in force", () => {
  test("without anything set, every limit is its seed", () => {
    const limits = limitsInForce({});
    expect(Object.keys(limits).sort()).toEqual([...LIMIT_KEYS].sort());
    for (const key of LIMIT_KEYS) expect(limits[key]).toBe(limitDefinition(key).seed);
  });

  test("a value the company has set replaces its seed and nothing else", () => {
    const limits = limitsInForce({ "airflow.goodPct": 12 });
    expect(limits["airflow.goodPct"]).toBe(12);
    expect({ ...limits, "airflow.goodPct": 15 }).toEqual(limitsInForce({}));
  });

  test("the ends of a range can be set", () => {
    for (const key of LIMIT_KEYS) {
      const { min, max } = limitDefinition(key);
      expect(limitProblems({ [key]: min })).toEqual([]);
      expect(limitProblems({ [key]: max })).toEqual([]);
    }
  });

  test("a stored value outside the range is named with its range, never replaced by the seed", () => {
    expect(limitProblems({ "airflow.goodPct": 31 })).toEqual([
      { field: "airflow.goodPct", message: expect.stringContaining("31 % is not from 1 to 30 %") },
    ]);
    expect(() => limitsInForce({ "airflow.goodPct": 31 })).toThrow(ImpossibleStateError);
    expect(() => limitsInForce({ "airflow.goodPct": Number.NaN })).toThrow(/Measured airflow is good/);
  });

  test("a key no rule reads is reported", () => {
    expect(limitProblems({ "airflow.gone": 1 })).toEqual([
      { field: "airflow.gone", message: expect.stringContaining("airflow.gone") },
    ]);
    expect(() => limitsInForce({ "airflow.gone": 1 })).toThrow(/airflow\.gone/);
    expect(() => limitsInForce({ toString: 1 })).toThrow(/toString/);
  });
});

test("a seed lies inside its own range, and a key begins with its folder", () => {
  for (const key of LIMIT_KEYS) {
    expect(limitProblems({ [key]: limitDefinition(key).seed }), key).toEqual([]);
    expect(key).toMatch(/^[a-z-]+\.[A-Za-z]+$/);
  }
});
