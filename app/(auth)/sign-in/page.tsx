import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { SignInForm } from "@/components/people/sign-in-form";
import { Card } from "@/components/ui/card";
import { currentScope } from "@/lib/auth/session";
import { ownPath } from "@/lib/domain/own-path";

export const metadata: Metadata = { title: "Sign in" };

export default async function SignInPage({
  searchParams,
}: {
  readonly searchParams: Promise<{
    readonly next?: string;
    readonly email?: string;
    readonly joined?: string;
  }>;
}) {
  const { next, email, joined } = await searchParams;
  if (await currentScope()) redirect("/");
  return (
    <main id="content" className="mx-auto grid min-h-dvh max-w-md content-center px-4 py-10">
      <h1 className="text-3xl font-semibold">Dewledger</h1>
      <p className="mt-1 mb-6 text-muted">One ledger per job, from the load to a house that stays dry.</p>
      <Card>
        <SignInForm next={ownPath(next)} email={email ?? ""} justJoined={joined === "1"} />
      </Card>
      <p className="mt-4 text-sm text-muted">No account? Ask the owner of your company for an invitation.</p>
    </main>
  );
}
