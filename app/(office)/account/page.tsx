import type { Metadata } from "next";
import { PasswordForm } from "@/components/people/password-form";
import { PageHeader } from "@/components/shell/page-header";
import { Card } from "@/components/ui/card";
import { pageScope } from "@/lib/server/page";
import { changeOwnPassword } from "./actions";

export const metadata: Metadata = { title: "Change password" };

export default async function AccountPage() {
  await pageScope("job.read");
  return (
    <>
      <PageHeader title="Change password" lead="Every device you are signed in on has to sign in again." />
      <Card className="max-w-md">
        <PasswordForm change={changeOwnPassword} />
      </Card>
    </>
  );
}
