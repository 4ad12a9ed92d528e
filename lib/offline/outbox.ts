/** Company and person: nothing kept under one key is ever shown under another. */
export type Who = string;

/** Where something that goes to the office is. */
export type SendState =
  | { readonly at: "phone" }
  | { readonly at: "office"; readonly since: string }
  /** The office will not take it as it is; it stays on the phone. */
  | { readonly at: "refused"; readonly message: string };

/** A picture taken for a job. Made and named on the phone, so that sending it twice is sending it once. */
export type Photo = {
  readonly id: string;
  readonly who: Who;
  readonly jobId: string;
  /** The field it proves; `null` for the job as a whole. */
  readonly field: string | null;
  readonly caption: string;
  /** By the phone's clock. */
  readonly takenAt: string;
  readonly latitude: number | null;
  readonly longitude: number | null;
  readonly type: string;
  /** Small enough to send from an attic. A file, not bytes in memory: every look at the store reads all pictures. */
  readonly bytes: Blob;
  readonly state: SendState;
};

/** What the camera made of a picture. It is sent when the office asks for it, never by itself. */
export type Original = {
  /** The picture's own id. */
  readonly id: string;
  readonly who: Who;
  readonly jobId: string;
  readonly caption: string;
  readonly takenAt: string;
  /** `null` when it is with the office, or had to go because the phone was full. */
  readonly file: Blob | null;
  /** `told`: the office knows that it cannot come. */
  readonly state: SendState | { readonly at: "told" };
};

/**
 * Something else that goes to the office once: an answer to its question, the signature, or what is handed over
 * of a job that is not this person's any more.
 */
export type Letter = {
  readonly id: string;
  readonly who: Who;
  readonly jobId: string;
  readonly kind: "answer" | "signature" | "hand-over";
  /** The question answered; `null` for anything else. */
  readonly questionId: string | null;
  readonly text: string;
  readonly madeAt: string;
  readonly state: SendState;
};
