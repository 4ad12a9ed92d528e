import type { Verdict } from "@/lib/engineering/findings";

/** How far a startup is, as the office sees it from the desk. */
export type StartupProgress = {
  readonly jobId: string;
  readonly number: number;
  readonly customerName: string;
  readonly place: string;
  readonly startupDue: string | null;
  readonly techs: readonly string[];
  readonly state: "not begun" | "draft" | "signed";
  /** Of the readings a signature needs. */
  readonly neededDone: number;
  readonly needed: number;
  /** All readings and settings entered. */
  readonly entered: number;
  readonly verdict: Verdict | null;
  /** Newest contact of any phone about this job; `null` before the first. */
  readonly lastContact: string | null;
  readonly photos: number;
  /** What phones said still waits on them. */
  readonly waitingFields: number;
  readonly waitingPhotos: number;
  readonly openQuestions: number;
  /** Late readings and pictures the office has to decide about. */
  readonly late: number;
};
