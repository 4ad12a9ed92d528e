import type { Metadata } from "next";
import { MailSwitches } from "@/components/people/mail-switches";
import { PasswordForm } from "@/components/people/password-form";
import { PageHeader } from "@/components/shell/page-header";
import { Card } from "@/components/ui/card";
import { pageScope } from "@/lib/server/page";
import { mailSwitches } from "@/lib/services/company-mail/switches";
import { changeOwnPassword, setOwnMail } from "./actions";

export const metadata: Metadata = { title: "Your account" };

export default async function AccountPage() {
  const scope = await pageScope("job.read");
  const switches = await mailSwitches(scope);
  return (
    <>
      <PageHeader title="Your account" lead="Your password, and the mail that comes to you." />
      <div className="grid max-w-md gap-6">
        <Card title="Change password">
          <p className="mb-3 text-sm text-muted">
            Every device you are signed in on has to sign in again. Do it at once when one is lost.
          </p>
          <PasswordForm change={changeOwnPassword} />
        </Card>
        {switches.length > 0 ? (
          <Card title="Mail to you">
            <MailSwitches switches={switches} send={setOwnMail} />
          </Card>
        ) : null}
      </div>
    </>
  );
}
