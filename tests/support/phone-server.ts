import { mergeFields, type PlainValue } from "@/lib/domain/merge-fields";
import { STAGE_FIELDS } from "@/lib/domain/stages";
import type { Answer, Doors } from "@/lib/offline/doors";
import type { UploadAnswer } from "@/lib/offline/draft";

type Outcome = Omit<UploadAnswer, "inputs" | "draftVersion" | "bundleTag">;

/** A server for one job, with receipts, merging by the application's own rule. Counts what it wrote. */
export function makePhoneServer() {
  let inputs: Readonly<Record<string, PlainValue>> = {};
  const receipts = new Map<string, Outcome>();
  const written: string[] = [];
  const photos = new Map<string, number>();
  const originals = new Map<string, number | string>();
  const letters: string[] = [];
  const handedOver = new Map<string, string>();
  const done = (): Answer<true> => ({ done: true, value: true });
  const doors: Doors = {
    readBundle: async () => ({ done: false, why: "later", message: "not part of this test" }),
    sendFields: async (_who, _jobId, upload) => {
      let outcome = receipts.get(upload.clientId);
      if (!outcome) {
        const merged = mergeFields("startup_record", STAGE_FIELDS.startup_record, inputs, upload.fields);
        const { accepted, conflicts, problems } = merged;
        inputs = merged.inputs as typeof inputs;
        written.push(upload.clientId);
        outcome = { accepted: accepted as Outcome["accepted"], conflicts, problems, waiting: [] };
        receipts.set(upload.clientId, outcome);
      }
      // As the answer travels: a copy, what became of the upload as the first time, the record as it is now.
      const answer = { ...outcome, inputs, draftVersion: written.length, bundleTag: null };
      return { done: true, value: structuredClone(answer) };
    },
    sendPhoto: async (photo) => {
      photos.set(photo.id, photo.bytes.size);
      return done();
    },
    sendOriginal: async (original, bytes) => {
      originals.set(original.id, bytes.byteLength);
      return done();
    },
    sayNoOriginal: async (original, why) => {
      originals.set(original.id, why);
      return done();
    },
    sendLetter: async (letter) => {
      if (!letters.includes(letter.id)) letters.push(letter.id);
      return done();
    },
    handOver: async (_who, what) => {
      handedOver.set(what.clientId, JSON.stringify(what.jobs));
      return done();
    },
    handOverPhoto: async (photo) => {
      photos.set(photo.id, photo.bytes.size);
      return done();
    },
  };
  return { doors, inputs: () => inputs, written, photos, originals, letters, handedOver };
}
