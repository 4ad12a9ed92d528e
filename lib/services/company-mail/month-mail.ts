import { company } from "@/lib/db/company";
import { workItems } from "@/lib/db/work-items";
import { dayAfter } from "@/lib/domain/days";
import type { TenantScope } from "@/lib/domain/scope";
import { env } from "@/lib/env";
import { monthDigest } from "../month-digest";
import { sendOnce } from "./send-once";

/** Asks for the mail of the month before today's, once. A company has none of a month in which it did not exist. */
export async function queueMonthMail(scope: TenantScope, today: string): Promise<boolean> {
  const month = dayAfter(`${today.slice(0, 7)}-01`, -1).slice(0, 7);
  if ((await workItems(scope).lastKey("mail the month", month)) === month) return false;
  if ((await company(scope).foundedAt()).slice(0, 7) > month) return false;
  await workItems(scope).add({
    task: "mail the month",
    title: `Mail: the month ${month}`,
    input: { month },
    key: month,
  });
  return true;
}

/** Mails the owner's month as a PDF. */
export async function mailMonth(scope: TenantScope, { month }: { readonly month: string }): Promise<string> {
  const { bytes, fileName } = await monthDigest(scope, month);
  const { name } = await company(scope).get();
  return sendOnce(scope, {
    kind: "month",
    key: `month ${month}`,
    message: {
      subject: `${name}: the month ${month}`,
      text: `The month ${month} is attached: what startups and logs said, complaints, and what goes with them.\n\nTo look further: ${env().NEXTAUTH_URL}/across-jobs`,
      attachments: [{ filename: fileName, contentType: "application/pdf", content: bytes }],
    },
  });
}
