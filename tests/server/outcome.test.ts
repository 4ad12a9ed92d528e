import { expect, test } from "vitest";
import { AppError } from "@/lib/errors";
import { refusalAnswer, refusalFor } from "@/lib/server/outcome";

test("what passes by itself says when to ask again; nothing else does", () => {
  const busy = refusalAnswer(refusalFor(new AppError("UNAVAILABLE", "Later."), "id"));
  expect([busy.status, busy.headers.get("retry-after")]).toEqual([503, "5"]);
  const broken = refusalAnswer(refusalFor(new Error("boom"), "id"));
  expect([broken.status, broken.headers.get("retry-after")]).toEqual([500, null]);
});
