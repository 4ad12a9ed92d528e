import type { ControlData, EquipmentModel, Instrument } from "./catalog";
import type { JobContext, LogSummary, WeatherDesign } from "./evaluate/context";
import type { JobState, RecordState } from "./jobs";
import type { Limits } from "./limits";
import type { Role } from "./roles";
import { emptyStage, STAGES, type StageInputs, type StageKey } from "./stages";

/** The shape below. A phone that finds another number keeps what it has and asks for the newer app. */
export const BUNDLE_VERSION = 1;

/** The release, as `package.json` says it. */
export const APP_VERSION = "0.1.0";

/** A question of the office, about the job or beside one reading. */
export type FieldQuestion = {
  readonly id: string;
  readonly jobId: string;
  readonly stage: StageKey | null;
  /** The field it is about; `null` when it is about the whole job. */
  readonly fieldPath: string | null;
  readonly text: string;
  readonly askedByName: string;
  readonly askedAt: string;
  /** `null` while nobody has answered. */
  readonly answer: string | null;
  readonly answeredByName: string | null;
  readonly answeredAt: string | null;
};

/**
 * What became of the office's wish for the camera's own picture; `null` while nobody asks. `ended`: nothing came for so long
 * that nobody waits any more.
 */
export type OriginalState = "asked" | "ended" | "received" | "gone" | "too large";

/** Days after which a wish for an original ends by itself: a phone that was lost will not answer. */
export const WISH_DAYS = 30;

/** Wishes from before this moment have ended. */
export function wishesEndedBefore(now: Date): Date {
  return new Date(now.getTime() - WISH_DAYS * 86_400_000);
}

/** An original that the office asked for: of a picture that this person took. */
export type OriginalWish = { readonly photoId: string; readonly jobId: string; readonly caption: string };

/** A picture or another file of a job, without its bytes. */
export type JobFile = {
  readonly id: string;
  readonly kind: "photo" | "report";
  readonly stage: StageKey | null;
  readonly fieldPath: string | null;
  readonly fileName: string;
  readonly caption: string;
  readonly mime: string;
  readonly sizeBytes: number;
  readonly sha256: string;
  readonly widthPx: number | null;
  readonly heightPx: number | null;
  readonly takenAt: string | null;
  readonly addedAt: string;
  readonly addedByName: string;
  readonly addedById: string;
  readonly original: OriginalState | null;
  /** When the office asked for the original last; `null` while nobody asks. */
  readonly originalAskedAt: string | null;
};

/** One stage record as the phone carries it: what was entered; findings are computed on the phone. */
export type FieldRecord<S extends StageKey = StageKey> = {
  readonly state: RecordState;
  readonly revision: number;
  readonly version: number;
  readonly inputs: StageInputs[S];
  readonly updatedAt: string;
  readonly updatedByName: string;
  readonly signedAt: string | null;
  readonly signatureName: string | null;
};

/** One assigned job, complete enough to be worked on without network. */
export type FieldJob = {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly state: JobState;
  readonly startupDue: string | null;
  readonly note: string;
  readonly customer: { readonly name: string; readonly phone: string };
  readonly home: {
    readonly addressLine: string;
    readonly city: string;
    readonly region: string;
    readonly postalCode: string;
    readonly elevationFt: number | null;
  };
  readonly records: { readonly [S in StageKey]: FieldRecord<S> | null };
  /** Key of `FieldBundle.models`; `null` when none is chosen. */
  readonly modelId: string | null;
  /** Key of `FieldBundle.controls`; `null` when none is chosen. */
  readonly controlId: string | null;
  readonly weather: WeatherDesign | null;
  readonly log: LogSummary | null;
  /** Open and answered questions that the office has not closed. */
  readonly questions: readonly FieldQuestion[];
  readonly photos: readonly JobFile[];
};

/** Everything a phone needs for its person's jobs in one company. Holds no other person's jobs. */
export type FieldBundle = {
  readonly bundleVersion: typeof BUNDLE_VERSION;
  readonly appVersion: string;
  readonly engineVersion: string;
  readonly person: {
    readonly userId: string;
    readonly name: string;
    readonly role: Role;
    /** True when this person may sign a startup record. */
    readonly maySignStartup: boolean;
  };
  readonly company: {
    readonly tenantId: string;
    readonly name: string;
    readonly timeZone: string;
    readonly accent: string | null;
    readonly logoHref: string | null;
  };
  readonly limits: Limits;
  readonly instruments: readonly Instrument[];
  /** The models chosen in the jobs below, with their tables. */
  readonly models: Readonly<Record<string, EquipmentModel>>;
  readonly controls: Readonly<
    Record<string, { readonly maker: string; readonly name: string; readonly data: ControlData }>
  >;
  readonly jobs: readonly FieldJob[];
  /** Missing in a bundle that an older version of the page kept. */
  readonly originals?: {
    /** Jobs beside those above whose originals stay on the phone: assigned, the startup not signed for 30 days yet. */
    readonly keepOf: readonly string[];
    readonly asked: readonly OriginalWish[];
  };
};

/**
 * The tag of a bundle: a hash of everything but the startup drafts, and the version of each draft in the order of the jobs.
 * A phone that is told a newer version of its own record by the answer to its upload writes it in by itself, so that its
 * own readings do not bring it the whole bundle.
 */
export function bundleTag(hash: string, versions: readonly number[]): string {
  return `"${[hash, ...versions].join(".")}"`;
}

/** The same tag with another version at one place; `null` when it is no such tag. A proxy may have marked it as weak. */
export function bundleTagWith(tag: string, place: number, version: number): string | null {
  const [hash, ...versions] = tag.replace(/^W\//, "").replaceAll('"', "").split(".");
  if (!hash || place < 0 || place >= versions.length) return null;
  return bundleTag(
    hash,
    versions.map((one, at) => (at === place ? version : Number(one))),
  );
}

/** What `evaluateJob` needs for a job of a bundle, with the startup inputs as they stand on the phone. */
export function contextOfFieldJob(
  bundle: FieldBundle,
  job: FieldJob,
  startupOnPhone?: StageInputs["startup_record"],
): JobContext {
  const stored = Object.fromEntries(
    STAGES.map((stage) => [stage, job.records[stage]?.inputs ?? emptyStage(stage)]),
  ) as unknown as StageInputs;
  return {
    elevationFt: job.home.elevationFt,
    inputs: startupOnPhone ? { ...stored, startup_record: startupOnPhone } : stored,
    model: job.modelId === null ? null : (bundle.models[job.modelId] ?? null),
    controlStages: job.controlId === null ? null : (bundle.controls[job.controlId]?.data.stages ?? null),
    instruments: bundle.instruments,
    limits: bundle.limits,
    weather: job.weather,
    log: job.log,
    forecast: null,
    lived: null,
    measuredOn: job.records.startup_record?.updatedAt.slice(0, 10) ?? null,
  };
}
