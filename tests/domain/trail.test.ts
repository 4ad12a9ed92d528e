import { describe, expect, test } from "vitest";
import { idsIn, trailChanges } from "@/lib/domain/trail";

const TECH = "0198c0de-0000-7000-8000-000000000001";
const GONE = "0198c0de-0000-7000-8000-000000000002";
const names = new Map([[TECH, "Sample Tech"]]);

describe("what an entry changed, in words", () => {
  test("a stage record's values carry the field's label and unit", () => {
    const entry = {
      action: "Airflow setup saved",
      entity: "stage record",
      before: { designExternalStaticInWc: 0.5, supplyDropInWc: null },
      after: { designExternalStaticInWc: 0.625, supplyDropInWc: 0.1 },
    };
    expect(trailChanges(entry, names)).toEqual([
      {
        key: "designExternalStaticInWc",
        label: "External static pressure expected",
        before: { kind: "quantity", value: 0.5, unit: "in. w.c.", decimals: 2 },
        // Two digits would show 0.63: the trail shows what was written.
        after: { kind: "quantity", value: 0.625, unit: "in. w.c.", decimals: 3 },
      },
      {
        key: "supplyDropInWc",
        label: "Supply duct share",
        before: { kind: "none" },
        after: { kind: "quantity", value: 0.1, unit: "in. w.c.", decimals: 2 },
      },
    ]);
  });

  test("of whole tables only what differs is told, and a limit taken back is told too", () => {
    const entry = {
      action: "rule limits changed",
      entity: "rule limits",
      before: { "airflow.goodPct": 12, "airflow.fairPct": 20 },
      after: { "airflow.goodPct": 12 },
    };
    expect(trailChanges(entry, names)).toEqual([
      {
        key: "airflow.fairPct",
        label: "Measured airflow is fair within this share of design",
        before: { kind: "quantity", value: 20, unit: "%", decimals: 0 },
        after: { kind: "text", text: "seed value" },
      },
    ]);
  });

  test("roles, days, people and parts of objects are named; guards against double saving are not", () => {
    const entry = {
      action: "job scheduled",
      entity: "job",
      before: null,
      after: {
        role: "tech",
        startupDue: "2026-07-31",
        techIds: [TECH, GONE],
        home: { city: "Springfield" },
        reviewDue: null,
        note: "",
        expectedVersion: 3,
      },
    };
    expect(trailChanges(entry, names).map(({ label, before, after }) => [label, before, after])).toEqual([
      ["Role", null, { kind: "text", text: "Field tech" }],
      ["Startup due", null, { kind: "text", text: "Jul 31, 2026" }],
      ["Assigned techs", null, { kind: "text", text: "Sample Tech, no longer listed" }],
      ["City", null, { kind: "text", text: "Springfield" }],
    ]);
    expect(idsIn(entry)).toEqual([TECH, GONE]);
  });

  test("a key of another release is kept and put in words", () => {
    const entry = { action: "x", entity: "y", before: { oldThing: 1 }, after: { oldThing: 2 } };
    expect(trailChanges(entry, names)[0]).toMatchObject({ label: "Old thing" });
  });

  test("entries without values have no changes", () => {
    expect(trailChanges({ action: "x", entity: "y", before: null, after: null }, names)).toEqual([]);
  });
});
