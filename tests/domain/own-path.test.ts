import { expect, test } from "vitest";
import { ownPath } from "@/lib/domain/own-path";

test.each([
  "//elsewhere.example",
  "/\\elsewhere.example",
  "\\\\elsewhere.example",
  "/\t/elsewhere.example",
  "/\n/elsewhere.example",
  "/\r\\elsewhere.example",
  "/.//elsewhere.example",
  "/a/..//elsewhere.example",
  "/%2e//elsewhere.example",
  "https://elsewhere.example",
  "https:/elsewhere.example",
  "javascript:alert(1)",
  "elsewhere.example",
  " /jobs",
  "/ /[",
  "",
  undefined,
])("%j leads nowhere but to a page of our own", (asked) => {
  const led = new URL(ownPath(asked), "http://localhost:3000/sign-in");
  expect(led.origin).toBe("http://localhost:3000");
  expect(ownPath(asked)).not.toContain("elsewhere.example");
});

test("a page of our own is led to with all that its address says", () => {
  expect(ownPath("/jobs?stage=startup_record&x=%20#top")).toBe("/jobs?stage=startup_record&x=%20#top");
});
