import { BUNDLE_VERSION, type FieldBundle } from "@/lib/domain/field-bundle";
import type { PlainValue } from "@/lib/domain/merge-fields";
import type { UploadAnswer } from "./draft";

/*
 * Checks that an answer arrived whole. The server has checked what is in it; a schema here would cost the phone
 * more script than everything else that sends.
 */

type Facts = Readonly<Record<string, unknown>>;

/** Reads what became of an upload; `null` when this is no such answer. */
export function readUploadAnswer(body: unknown): UploadAnswer | null {
  if (!isFacts(body)) return null;
  const { inputs, conflicts, problems, accepted, waiting, version, state, bundleTag } = body;
  if (!isValues(inputs) || !isValues(accepted)) return null;
  if (!isListOf(conflicts, "theirs") || !isListOf(problems, "message")) return null;
  if (!Array.isArray(waiting)) return null;
  return {
    inputs,
    waiting,
    accepted,
    conflicts: conflicts as unknown as UploadAnswer["conflicts"],
    problems: problems as unknown as UploadAnswer["problems"],
    draftVersion: state === "draft" && typeof version === "number" ? version : null,
    bundleTag: typeof bundleTag === "string" ? bundleTag : null,
  };
}

/** Reads what a phone needs for its jobs; `null` when it did not arrive whole or is of another shape. */
export function readBundle(body: unknown): FieldBundle | null {
  if (!isFacts(body) || body.bundleVersion !== BUNDLE_VERSION || !Array.isArray(body.jobs)) return null;
  const { person, company, instruments, limits, models, controls } = body;
  if (!isFacts(person) || typeof person.userId !== "string") return null;
  if (!isFacts(company) || typeof company.tenantId !== "string") return null;
  if (!Array.isArray(instruments) || !isFacts(limits) || !isFacts(models) || !isFacts(controls)) return null;
  const whole = body.jobs.every(
    (job: unknown) => isFacts(job) && typeof job.id === "string" && isFacts(job.records) && isFacts(job.home),
  );
  return whole ? (body as unknown as FieldBundle) : null;
}

/** Any answer that arrived whole. */
export function readAny(body: unknown): true | null {
  return isFacts(body) ? true : null;
}

function isFacts(given: unknown): given is Facts {
  return typeof given === "object" && given !== null && !Array.isArray(given);
}

function isValues(given: unknown): given is Readonly<Record<string, PlainValue>> {
  return (
    isFacts(given) &&
    Object.values(given).every((one) => one === null || ["string", "number", "boolean"].includes(typeof one))
  );
}

function isListOf(given: unknown, key: string): given is readonly Facts[] {
  return (
    Array.isArray(given) && given.every((one) => isFacts(one) && typeof one.field === "string" && key in one)
  );
}
