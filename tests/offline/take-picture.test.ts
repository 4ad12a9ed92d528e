import { expect, test } from "vitest";
import { takePicture } from "@/lib/offline/take-picture";

const NOON = new Date("2026-07-01T12:00:00.000Z");
const SMALL = { bytes: new Blob(["small"]), type: "image/jpeg" };
const FACTS = { jobId: "job", field: null, caption: "Drain" };
type Place = { readonly latitude: number; readonly longitude: number } | null;

function open() {
  const done: (readonly [string, ...unknown[]])[] = [];
  let found: (place: Place) => void = () => undefined;
  const where = new Promise<Place>((tell) => {
    found = tell;
  });
  const phone = {
    keepPhoto: async (photo: object, camera: Blob | null) => {
      done.push(["kept", photo, camera?.size]);
      return "id";
    },
    placePhoto: async (id: string, place: object) => void done.push(["placed", id, place]),
    send: async () => void done.push(["sent"]),
  };
  const tools = { shrink: async () => SMALL, where: () => where, now: () => NOON };
  return { done, found, phone, tools };
}

test("a picture is kept before the phone knows where it is, and gets its place before it is sent", async () => {
  const { done, found, phone, tools } = open();
  const taking = takePicture(phone, { ...FACTS, file: new Blob(["the camera's own"]) }, tools);
  await new Promise((soon) => setTimeout(soon, 5));
  const kept = { ...FACTS, ...SMALL, latitude: null, longitude: null, takenAt: NOON.toISOString() };
  expect(done).toEqual([["kept", kept, 16]]);
  found({ latitude: 29.3, longitude: -94.8 });
  await taking;
  expect(done.slice(1)).toEqual([["placed", "id", { latitude: 29.3, longitude: -94.8 }], ["sent"]]);
});

test("without a place it stays as it is; what is no picture is refused in words and nothing is kept", async () => {
  const { done, found, phone, tools } = open();
  found(null);
  await takePicture(phone, { ...FACTS, file: new Blob(["x"]) }, tools);
  expect(done.map(([what]) => what)).toEqual(["kept", "sent"]);
  const empty = { ...tools, shrink: async () => Promise.reject(new Error("This is not a picture.")) };
  await expect(takePicture(phone, { ...FACTS, file: new Blob([]) }, empty)).rejects.toThrow("not a picture");
  expect(done).toHaveLength(2);
});
