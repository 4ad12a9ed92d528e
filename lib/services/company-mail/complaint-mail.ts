import { callbacks } from "@/lib/db/callbacks";
import { company } from "@/lib/db/company";
import { overdueCallbacks } from "@/lib/db/overdue-callbacks";
import { workItems } from "@/lib/db/work-items";
import { CALLBACK_KINDS, CALLBACK_STATES, type Callback } from "@/lib/domain/callbacks";
import { dayAfter } from "@/lib/domain/days";
import { asId, type CallbackId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { env } from "@/lib/env";
import { companyToday } from "../company-today";
import { sendOnce } from "./send-once";

export type ComplaintMail = {
  readonly callbackId: string;
  readonly why: "came in" | "opened again by a log";
  /** The callback's version, so that each opening is told once. */
  readonly version: number;
};

/** A complaint older than this when it is taken down is being caught up with, not news. */
const NEWS_DAYS = 14;

/** Asks for the mail about a complaint, in the transaction that changes it. */
export async function queueComplaintMail(
  scope: TenantScope,
  mail: ComplaintMail,
  about: { readonly jobNumber: number | null; readonly reportedOn: string },
): Promise<void> {
  const today = await companyToday(scope);
  if (mail.why === "came in" && about.reportedOn < dayAfter(today, -NEWS_DAYS)) return;
  await workItems(scope).add({
    task: "mail about a complaint",
    title: `Mail: a complaint ${mail.why}${about.jobNumber === null ? "" : `, job ${about.jobNumber}`}`,
    input: mail,
    key: keyOf(mail),
  });
}

/** Mails it to the office. */
export async function mailComplaint(scope: TenantScope, mail: ComplaintMail): Promise<string> {
  const callback = await callbacks(scope).find(asId<"callback">(mail.callbackId) satisfies CallbackId);
  if (callback === null) return "The complaint is gone.";
  const { job, kind, complaint } = callback;
  const what = CALLBACK_KINDS[kind].label;
  const reopened = mail.why === "opened again by a log";
  return sendOnce(scope, {
    kind: "complaints",
    key: keyOf(mail),
    message: {
      subject: reopened
        ? `Opened again by the log: job ${job.number}, ${job.customerName}, ${what}`
        : `New complaint: job ${job.number}, ${job.customerName}, ${what}`,
      text: [
        reopened ? callback.reopenedByLog : `“${complaint}”`,
        "",
        ...factsOf(callback),
        "",
        addressOf(callback),
      ].join("\n"),
    },
  });
}

function factsOf(callback: Callback): readonly string[] {
  const { reportedOn, reportedByName, state, dueOn, evidence } = callback;
  return [
    `Reported on ${reportedOn}${reportedByName === "" ? "" : ` by ${reportedByName}`}. ${CALLBACK_STATES[state]}${dueOn === null ? "" : `, due ${dueOn}`}.`,
    `Fell short in the ledger: ${evidence.fallsShort.join("; ") || "nothing"}.`,
    `Log of the house: ${evidence.log ?? "none yet"}.`,
    `Settings as left: ${evidence.settings.join("; ") || "none recorded"}.`,
  ];
}

/** Asks for the mail about what is overdue, when something has become so since the last. */
export async function queueOverdueMail(scope: TenantScope, today: string): Promise<boolean> {
  const last = await workItems(scope).lastKey("mail what is overdue", today);
  if (last === today) return false;
  const overdue = await overdueCallbacks(scope, today);
  // What was due on the day of the last mail was not yet overdue then.
  if (!overdue.some(({ dueOn }) => last === null || (dueOn ?? "") >= last)) return false;
  await workItems(scope).add({
    task: "mail what is overdue",
    title: `Mail: complaints overdue on ${today}`,
    input: { today },
    key: today,
  });
  return true;
}

/** Mails the list of what is overdue. */
export async function mailOverdue(
  scope: TenantScope,
  { today }: { readonly today: string },
): Promise<string> {
  const overdue = await overdueCallbacks(scope, today);
  if (overdue.length === 0) return "Nothing is overdue any more.";
  const { name } = await company(scope).get();
  const count = overdue.length === 1 ? "1 complaint is" : `${overdue.length} complaints are`;
  return sendOnce(scope, {
    kind: "complaints",
    key: `overdue ${today}`,
    message: {
      subject: `${name}: ${count} overdue`,
      text: [
        `${count} overdue on ${today}:`,
        "",
        ...overdue.flatMap((one) => [
          `Due ${one.dueOn}: job ${one.job.number}, ${one.job.customerName}. ${CALLBACK_KINDS[one.kind].label}. ${CALLBACK_STATES[one.state]}.`,
          addressOf(one),
          "",
        ]),
      ].join("\n"),
    },
  });
}

const keyOf = ({ callbackId, why, version }: ComplaintMail) => `complaint ${callbackId} ${why} ${version}`;
const addressOf = ({ job }: Callback) => `${env().NEXTAUTH_URL}/jobs/${job.id}/callbacks`;
