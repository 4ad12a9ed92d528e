import { describe, expect, test } from "vitest";
import { may, PERMISSIONS, reachOf } from "@/lib/domain/roles";

describe("who may do what", () => {
  test("an owner may do everything in the company", () => {
    for (const permission of PERMISSIONS) expect(reachOf("owner", permission)).toBe("all");
  });

  test("a tech reaches assigned jobs only, and never the owner's views", () => {
    expect(reachOf("tech", "job.read")).toBe("assigned");
    expect(reachOf("tech", "startup.sign")).toBe("assigned");
    for (const permission of ["job.create", "design.edit", "across-jobs.read", "members.manage"] as const) {
      expect(may("tech", permission)).toBe(false);
    }
  });

  test("the office signs design and review, not startups", () => {
    expect(may("office", "design.sign")).toBe(true);
    expect(may("office", "review.sign")).toBe(true);
    expect(may("office", "startup.sign")).toBe(false);
    expect(may("office", "members.manage")).toBe(false);
  });
});
