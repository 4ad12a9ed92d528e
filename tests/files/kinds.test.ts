import { expect, test } from "vitest";
import { MOST_LOG_BYTES, MOST_PHOTO_BYTES } from "@/lib/domain/file-limits";
import { FILE_KINDS } from "@/lib/files/kinds";

test("the store takes of pictures and logs what screens, phones and doors take", () => {
  expect(FILE_KINDS.photo.maxBytes).toBe(MOST_PHOTO_BYTES);
  expect(FILE_KINDS.log.maxBytes).toBe(MOST_LOG_BYTES);
});
