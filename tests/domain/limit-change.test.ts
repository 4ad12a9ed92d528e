import { describe, expect, test } from "vitest";
import { changedLimits } from "@/lib/domain/limit-change";

const OWN = { "airflow.goodPct": 12, "airflow.gone": 3 };

describe("changing one limit of a company", () => {
  test("keeps what was typed with its unit, and the other limits", () => {
    expect(changedLimits(OWN, "airflow.staticDesignInWc", '0.15"')).toEqual({
      ok: true,
      values: { ...OWN, "airflow.staticDesignInWc": 0.15 },
    });
    expect(changedLimits(OWN, "airflow.goodPct", "10 %")).toEqual({
      ok: true,
      values: { ...OWN, "airflow.goodPct": 10 },
    });
  });

  test("going back to the seed takes the company's value away, also one no rule reads any more", () => {
    expect(changedLimits(OWN, "airflow.goodPct", null)).toEqual({ ok: true, values: { "airflow.gone": 3 } });
    expect(changedLimits(OWN, "airflow.gone", null)).toEqual({ ok: true, values: { "airflow.goodPct": 12 } });
  });

  test.each([
    ["airflow.goodPct", "31", "from 1 to 30 %"],
    ["airflow.goodPct", "", "from 1 to 30 %"],
    ["airflow.goodPct", "12.5", "whole number"],
    ["airflow.goodPct", "12", "in force already"],
    ["airflow.goodPct", "ten", "not a number"],
    ["airflow.goodPct", "12 cfm", "another unit"],
    ["airflow.staticDesignInWc", "0.125", "2 digits after the point"],
    ["airflow.gone", "4", "No rule reads"],
    ["constructor", "4", "No rule reads"],
    ["airflow.fairPct", null, "already has its seed value"],
  ])("refuses %s = %j and says what to do", (key, typed, fix) => {
    expect(changedLimits(OWN, key, typed)).toEqual({
      ok: false,
      problem: { field: "value", message: expect.stringContaining(fix) },
    });
  });
});
