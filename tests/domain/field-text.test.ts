import { expect, test } from "vitest";
import { charactersIn, keepableText, longerThan } from "@/lib/domain/field-range";
import { fieldSchema } from "@/lib/domain/field-schema";
import { startupRecordFields } from "@/lib/domain/stages/startup-record";

test("a text keeps its emoji and loses only what no database keeps", () => {
  expect(keepableText("Attic 🥵, hatch\u0000 sticks \ud83d")).toBe("Attic 🥵, hatch sticks ");
  expect(keepableText("👩🏽‍🔧 ok")).toBe("👩🏽‍🔧 ok");
});

test("the phone says of a text that is too long what the office would say", () => {
  const { notes } = startupRecordFields;
  const longest = "🙂".repeat(notes.maxLength);
  expect(charactersIn(longest)).toBe(notes.maxLength);
  expect(fieldSchema(notes).safeParse(longest).success).toBe(true);
  const said = fieldSchema(notes).safeParse(`${longest}.`);
  expect(said.error?.issues[0]?.message).toBe(longerThan(notes));
});
