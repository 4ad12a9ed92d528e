import { z } from "zod";
import { MOST_ANSWER, MOST_SIGNATURE } from "@/lib/domain/field-range";
import { fieldChangesSchema } from "./sync";

/*
 * What a phone and the server say to each other.
 *
 * Every request of a phone carries the headers `x-dewledger-person` and `x-dewledger-company` (PERSON_HEADER,
 * COMPANY_HEADER of lib/domain/shown-for), the ids taken from the bundle its data came with:
 *   401 NOT_SIGNED_IN   sign in again; what waits on the phone is kept.
 *   409 OTHER_PERSON    somebody else is signed in now: send nothing of the first person.
 *   410 REMOVED         the person left the company: offer what waits by the hand-over, then erase.
 *   404 NOT_FOUND       on a job's door: it is not this person's any more; the same, for this job only.
 *   410 HAND_OVER_CLOSED  nothing more is taken: erase.
 *   5xx, 429, no answer: nothing is known; send the same again later.
 *
 * GET  /api/field/bundle                          FieldBundle (lib/domain/field-bundle), ETag / 304
 * PUT  /api/jobs/{jobId}/startup                  syncStartupSchema → SyncAnswer (schemas/sync)
 * PUT  /api/jobs/{jobId}/photos/{photoId}?…       bytes; query photoDetailsSchema → JobFile
 * GET  /api/jobs/{jobId}/photos                   { photos: JobFile[] }
 * GET  /api/jobs/{jobId}/photos/{photoId}?size=small|full|original|camera
 * PUT  /api/jobs/{jobId}/photos/{photoId}/original?sha256=…   bytes of an original that was asked for → JobFile
 * DELETE /api/jobs/{jobId}/photos/{photoId}/original?why=gone|too large   it cannot be sent → { told: true }
 * DELETE /api/jobs/{jobId}/photos/{photoId}       { removed: true }, safe to repeat
 * PUT  /api/jobs/{jobId}/questions/{questionId}   answerQuestionSchema → FieldQuestion
 * PUT  /api/jobs/{jobId}/startup/signature        signOnPhoneSchema → { version, state }
 * POST /api/field/hand-over                       handOverSchema → { kept }
 * PUT  /api/field/hand-over/{jobId}/photos/{photoId}?…  bytes, as above → { kept: true }
 */

/** SHA-256 of the bytes in hex: a body cut on its way is refused, a repeat is recognised. */
const sha256 = z
  .string()
  .regex(/^[0-9a-f]{64}$/, { error: "sha256: 64 hexadecimal digits of the bytes are needed." });

/** A place is two plain numbers or none: an empty one is not 0. */
const degrees = (most: number) =>
  z
    .string()
    .regex(/^-?\d+(\.\d+)?(e-\d+)?$/)
    .transform(Number)
    .pipe(z.number().min(-most).max(most))
    .optional();

/** Query of an original's upload. */
export const originalDetailsSchema = z.object({ sha256 });

/** Query of a photo's upload. Everything is text, as in any address. */
export const photoDetailsSchema = z.object({
  sha256,
  /** The field of the startup record it proves. */
  field: z.string().max(80).optional(),
  caption: z.string().max(300, { error: "Caption: at most 300 characters." }).default(""),
  /** When it was taken by the device's clock. */
  takenAt: z.iso.datetime({ error: "takenAt: a date and time such as 2026-07-01T12:00:00Z." }).optional(),
  latitude: degrees(90),
  longitude: degrees(180),
  /** Photos that still wait on the device after this one. */
  waiting: z.coerce.number().int().min(0).max(10_000).optional(),
});
export type PhotoDetails = z.output<typeof photoDetailsSchema>;

/** Which picture of a photo: a thumbnail, one for the screen, the bytes as they came, or what the camera made of it. */
export const PHOTO_SIZES = ["small", "full", "original", "camera"] as const;
export type PhotoSize = (typeof PHOTO_SIZES)[number];

export const askOriginalSchema = z.strictObject({ jobId: z.uuid(), photoId: z.uuid() });

/** Why a phone cannot send an original. */
export const NO_ORIGINAL = ["gone", "too large"] as const;

export const answerQuestionSchema = z.strictObject({
  /** Made on the device, once for each answer. */
  clientId: z.uuid(),
  deviceTime: z.iso.datetime(),
  answer: z
    .string()
    .trim()
    .min(1, { error: "Write an answer." })
    .max(MOST_ANSWER, {
      error: `Answer: at most ${MOST_ANSWER.toLocaleString("en-US")} characters.`,
    }),
});
export type AnswerQuestionInput = z.output<typeof answerQuestionSchema>;

export const signOnPhoneSchema = z.strictObject({
  clientId: z.uuid(),
  deviceTime: z.iso.datetime(),
  signatureName: z
    .string()
    .trim()
    .min(1, { error: "Name of the signer is needed." })
    .max(MOST_SIGNATURE, { error: `Name of the signer: at most ${MOST_SIGNATURE} characters.` }),
});
export type SignOnPhoneInput = z.output<typeof signOnPhoneSchema>;

/** A question of the office, about the job or about one reading. */
export const askQuestionSchema = z.strictObject({
  jobId: z.uuid(),
  fieldPath: z
    .string()
    .max(80)
    .nullable()
    .transform((given) => (given === "" ? null : given)),
  text: z.string().trim().min(1, { error: "Write a question." }).max(1_000, {
    error: "Question: at most 1,000 characters.",
  }),
});
export type AskQuestionInput = z.output<typeof askQuestionSchema>;
export const closeQuestionSchema = z.strictObject({ jobId: z.uuid(), questionId: z.uuid() });

/** What the office decides about one late reading or picture. */
export const decideLateSchema = z.strictObject({
  jobId: z.uuid(),
  id: z.uuid(),
  take: z.boolean(),
});
export type DecideLateInput = z.output<typeof decideLateSchema>;

/** What a phone that may no longer see a job still holds of it. */
export const handOverSchema = z.strictObject({
  clientId: z.uuid(),
  deviceTime: z.iso.datetime(),
  jobs: z
    .array(z.strictObject({ jobId: z.uuid(), fields: fieldChangesSchema }))
    .min(1)
    .max(50),
});
export type HandOverInput = z.output<typeof handOverSchema>;
