import type { JobContext } from "@/lib/domain/evaluate";
import {
  contextOfFieldJob,
  type FieldBundle,
  type FieldQuestion,
  type JobFile,
  type OriginalWish,
} from "@/lib/domain/field-bundle";
import type { PlainValue } from "@/lib/domain/merge-fields";

/** One assigned job as the screens work with it. */
export type FieldJob = {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly customerName: string;
  readonly customerPhone: string;
  readonly address: string;
  readonly startupDue: string | null;
  readonly note: string;
  /** `null` before anything was entered. */
  readonly version: number | null;
  readonly isSigned: boolean;
  readonly signatureName: string | null;
  /** Everything a finding follows from; the startup record in it is the one the server holds. */
  readonly context: JobContext;
  /** What the maker of the control prints beside our own words, by field. */
  readonly makerLabels: Readonly<Record<string, string>>;
  readonly questions: readonly FieldQuestion[];
  /** Pictures that the office has already, of whichever device. */
  readonly photos: readonly JobFile[];
};

/** What a phone shows of its bundle. */
export type FieldView = {
  readonly personName: string;
  readonly maySign: boolean;
  readonly companyName: string;
  readonly accent: string | null;
  readonly jobs: readonly FieldJob[];
  /** Originals that the office asks for. */
  readonly wishes: readonly OriginalWish[];
};

export function viewOf(bundle: FieldBundle): FieldView {
  const { person, company } = bundle;
  return {
    personName: person.name,
    maySign: person.maySignStartup,
    companyName: company.name,
    accent: company.accent,
    wishes: bundle.originals?.asked ?? [],
    jobs: bundle.jobs.map((job) => {
      const { home, customer, records } = job;
      return {
        id: job.id,
        number: job.number,
        title: job.title,
        customerName: customer.name,
        customerPhone: customer.phone,
        address: `${home.addressLine}, ${home.city}, ${home.region} ${home.postalCode}`,
        startupDue: job.startupDue,
        note: job.note,
        version: records.startup_record?.version ?? null,
        isSigned: records.startup_record?.state === "signed",
        signatureName: records.startup_record?.signatureName ?? null,
        context: contextOfFieldJob(bundle, job),
        makerLabels: job.controlId === null ? {} : (bundle.controls[job.controlId]?.data.makerLabels ?? {}),
        questions: job.questions,
        photos: job.photos,
      };
    }),
  };
}

/** Company and person of a bundle, as one key. */
export function whoOf({ company, person }: FieldBundle): string {
  return `${company.tenantId}.${person.userId}`;
}

/** The startup record of a job as the server told it. */
export function recordOf(job: FieldJob): Readonly<Record<string, PlainValue>> {
  return job.context.inputs.startup_record;
}
