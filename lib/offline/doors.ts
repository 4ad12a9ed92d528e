import type { FieldBundle } from "@/lib/domain/field-bundle";
import type { FieldChanges } from "@/lib/domain/merge-fields";
import { COMPANY_HEADER, PERSON_HEADER } from "@/lib/domain/shown-for";
import type { Upload, UploadAnswer } from "./draft";
import type { Letter, Original, Photo, Who } from "./outbox";
import { readAny, readBundle, readUploadAnswer } from "./read-answers";

/**
 * Why nothing was confirmed. `later`: try again; `failed`: this alone, for a fault at the office, whatever else may go; `sign in`: the session has ended; `other person`: somebody else
 * is signed in; `removed`: the person left the company; `closed`: nothing of it is taken any more; `gone`: the job
 * is not this person's any more; `refused`: a person must look; `late`: the record was signed meanwhile.
 */
export type NotDone = {
  readonly done: false;
  readonly why:
    | "later"
    | "failed"
    | "sign in"
    | "other person"
    | "removed"
    | "closed"
    | "gone"
    | "refused"
    | "late";
  readonly message: string;
};
export type Done<T> = { readonly done: true; readonly value: T };
export type Answer<T> = Done<T> | NotDone;

export type HandOver = {
  readonly clientId: string;
  readonly deviceTime: string;
  readonly jobs: readonly { readonly jobId: string; readonly fields: FieldChanges }[];
};

export type NewBundle = { readonly bundle: FieldBundle; readonly etag: string | null };
export type Waiting = { readonly fields: number; readonly photos: number };

/** The ways to the office. `who` is whose data it is, so that it never ends up as another person's. */
export type Doors = {
  /** With `null` for `who`: of whoever is signed in. */
  readonly readBundle: (who: Who | null, etag: string | null) => Promise<Answer<NewBundle | "unchanged">>;
  /** `waiting`: what stays on the phone after this upload, for the office to see. `bundleTag`: asks whether there is news. */
  readonly sendFields: (
    who: Who,
    jobId: string,
    upload: Upload,
    waiting: Waiting,
    bundleTag: string | null,
  ) => Promise<Answer<UploadAnswer>>;
  readonly sendPhoto: (photo: Photo) => Promise<Answer<true>>;
  readonly sendOriginal: (original: Original, bytes: ArrayBuffer) => Promise<Answer<true>>;
  readonly sayNoOriginal: (original: Original, why: "gone" | "too large") => Promise<Answer<true>>;
  readonly sendLetter: (letter: Letter) => Promise<Answer<true>>;
  readonly handOver: (who: Who, what: HandOver) => Promise<Answer<true>>;
  readonly handOverPhoto: (photo: Photo) => Promise<Answer<true>>;
};

export const NO_CONNECTION = "No connection. Everything is kept on this phone and goes out when it is back.";
const LOST_PICTURE = "This phone has lost this picture. Take it again, then throw this one away.";
const TIMEOUT_MS = 20_000;
const PHOTO_TIMEOUT_MS = 120_000;
const DELETE = { method: "DELETE" };

/** The doors over the network. Whatever is not a whole, well-formed answer counts as not answered. */
export function networkDoors(ask: typeof fetch = (input, init) => fetch(input, init)): Doors {
  const call = async <T>(
    who: Who | null,
    path: string,
    request: RequestInit,
    read: (body: unknown, response: Response) => T | null,
    timeoutMs = TIMEOUT_MS,
  ): Promise<Answer<T>> => {
    try {
      const headers = { ...request.headers, ...headersOf(who) };
      const signal = AbortSignal.timeout(timeoutMs);
      const response = await ask(path, { ...request, headers, cache: "no-store", redirect: "error", signal });
      const body: unknown = response.status === 304 ? null : await response.json();
      if (!response.ok && response.status !== 304) return refusal(response.status, body);
      const value = read(body, response);
      return value === null ? notReached() : { done: true, value };
    } catch {
      return notReached();
    }
  };
  const sendBytes = async (photo: Photo, path: string): Promise<Answer<true>> => {
    const bytes = await photo.bytes.arrayBuffer().catch(() => null);
    // No later contact brings it back.
    if (bytes === null) return { done: false, why: "refused", message: LOST_PICTURE };
    const query = await photoQuery(photo, bytes);
    const request = { method: "PUT", body: bytes, headers: { "content-type": photo.type } };
    return call(
      photo.who,
      `${path}/${photo.jobId}/photos/${photo.id}?${query}`,
      request,
      readAny,
      PHOTO_TIMEOUT_MS,
    );
  };
  return {
    readBundle: (who, etag) =>
      call(who, "/api/field/bundle", etag === null ? {} : { headers: { "if-none-match": etag } }, readNew),
    sendFields: (who, jobId, upload, waiting, bundleTag) =>
      call(
        who,
        `/api/jobs/${jobId}/startup`,
        json("PUT", { ...upload, waiting, bundleTag }),
        readUploadAnswer,
      ),
    sendPhoto: (photo) => sendBytes(photo, "/api/jobs"),
    sendOriginal: async (original, bytes) => {
      const request = { method: "PUT", body: bytes };
      const path = `${originalPath(original)}?sha256=${await sha256Of(bytes)}`;
      return call(original.who, path, request, readAny, PHOTO_TIMEOUT_MS);
    },
    sayNoOriginal: (original, why) =>
      call(original.who, `${originalPath(original)}?${new URLSearchParams({ why })}`, DELETE, readAny),
    sendLetter: (letter) => call(letter.who, letterPath(letter), json("PUT", letterBody(letter)), readAny),
    handOver: (who, what) => call(who, "/api/field/hand-over", json("POST", what), readAny),
    handOverPhoto: (photo) => sendBytes(photo, "/api/field/hand-over"),
  };
}

function readNew(body: unknown, response: Response): NewBundle | "unchanged" | null {
  if (response.status === 304) return "unchanged";
  const bundle = readBundle(body);
  return bundle && { bundle, etag: response.headers.get("etag") };
}

function headersOf(who: Who | null): Record<string, string> {
  const [company, person] = (who ?? "").split(".");
  return company && person ? { [COMPANY_HEADER]: company, [PERSON_HEADER]: person } : {};
}

function json(method: string, body: unknown): RequestInit {
  return { method, headers: { "content-type": "application/json" }, body: JSON.stringify(body) };
}

async function photoQuery(photo: Photo, bytes: ArrayBuffer): Promise<string> {
  const sha256 = await sha256Of(bytes);
  const facts = new URLSearchParams({ sha256, takenAt: photo.takenAt, caption: photo.caption });
  if (photo.field !== null) facts.set("field", photo.field);
  if (photo.latitude !== null && photo.longitude !== null) {
    facts.set("latitude", String(photo.latitude));
    facts.set("longitude", String(photo.longitude));
  }
  return String(facts);
}

async function sha256Of(bytes: ArrayBuffer): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

function originalPath({ jobId, id }: Original): string {
  return `/api/jobs/${jobId}/photos/${id}/original`;
}

function letterPath({ kind, jobId, questionId }: Letter): string {
  return kind === "answer"
    ? `/api/jobs/${jobId}/questions/${questionId}`
    : `/api/jobs/${jobId}/startup/signature`;
}

function letterBody({ kind, id, text, madeAt }: Letter): object {
  const sent = { clientId: id, deviceTime: madeAt };
  return kind === "answer" ? { ...sent, answer: text } : { ...sent, signatureName: text };
}

const WHY: Readonly<Record<string, NotDone["why"]>> = {
  NOT_SIGNED_IN: "sign in",
  OTHER_PERSON: "other person",
  REMOVED: "removed",
  HAND_OVER_CLOSED: "closed",
  NOT_FOUND: "gone",
  // The application itself says so; a 500 without its word comes from something in between.
  UNEXPECTED: "failed",
};

function refusal(status: number, body: unknown): NotDone {
  const { code, message } = (typeof body === "object" && body !== null ? body : {}) as Readonly<
    Record<string, unknown>
  >;
  const known = typeof code === "string" ? WHY[code] : undefined;
  if (known === undefined && (status >= 500 || status === 408 || status === 429)) return notReached();
  // A refusal in words of its own comes from the application; anything else from something in between.
  if (typeof message !== "string") return notReached();
  return { done: false, why: known ?? "refused", message };
}

function notReached(): NotDone {
  return { done: false, why: "later", message: NO_CONNECTION };
}
