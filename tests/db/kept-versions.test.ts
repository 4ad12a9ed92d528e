import { expect, test } from "vitest";
import { keptVersions } from "@/lib/db/kept-versions";
import type { TenantScope } from "@/lib/domain/scope";

const company = (tenantId: string) => ({ tenantId }) as TenantScope;

test("a kept row is answered to its own company only", () => {
  const rows = keptVersions<string>(5);
  rows.keep(company("one"), "id", "of one");
  expect(rows.get(company("one"), "id")).toBe("of one");
  expect(rows.get(company("other"), "id")).toBeUndefined();
});

test("of too many rows the one not asked for the longest goes", () => {
  const rows = keptVersions<string>(2);
  const own = company("one");
  rows.keep(own, "a", "A");
  rows.keep(own, "b", "B");
  rows.get(own, "a");
  rows.keep(own, "c", "C");
  expect(["a", "b", "c"].map((id) => rows.get(own, id))).toEqual(["A", undefined, "C"]);
});
