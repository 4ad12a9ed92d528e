import type { Metadata } from "next";
import { JoinForm } from "@/components/people/join-form";
import { Card } from "@/components/ui/card";
import { ROLE_NAMES } from "@/lib/domain/roles";
import { load } from "@/lib/server/page";
import { openInvitation } from "@/lib/services/people";
import { join } from "./actions";

export const metadata: Metadata = {
  title: "Join",
  referrer: "no-referrer",
  robots: { index: false, follow: false },
};

export default async function JoinPage({
  params,
}: {
  readonly params: Promise<{ readonly secret: string }>;
}) {
  const { secret } = await params;
  const invitation = await load(openInvitation(secret));
  return (
    <main id="content" className="mx-auto grid min-h-dvh max-w-md content-center px-4 py-10">
      <h1 className="text-2xl font-semibold">Join {invitation.companyName}</h1>
      <p className="mt-1 mb-6 text-muted">
        As {ROLE_NAMES[invitation.role].toLowerCase()}, with the address {invitation.email}.
      </p>
      <Card>
        <JoinForm secret={secret} personIsKnown={invitation.personIsKnown} join={join} />
      </Card>
    </main>
  );
}
