"use client";

import { useActionState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { Notice } from "@/components/ui/notice";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";
import { phoneOwner, waitingSignOut } from "@/lib/offline/owner";

type Props = {
  readonly next: string;
  readonly email: string;
  readonly justJoined: boolean;
  /** On a page that stays: the same person signs in once more, and this follows. */
  readonly again?: () => void;
};

const REFUSALS: Readonly<Record<string, string>> = {
  TOO_MANY_TRIES: "Too many tries. Wait fifteen minutes, then try again.",
  UNAVAILABLE: "Signing in does not work just now, and it is not your password. Try again in a minute.",
  OFFLINE: "No connection to the server. Your entries are still here; try again when you have a signal.",
};

/** E-mail and password. What is wrong is not said more exactly: it would tell who has an account. */
export function SignInForm({ next, email, justJoined, again }: Props) {
  const [refusal, send, busy] = useActionState(async (_: string | null, form: FormData) => {
    const problem = await signIn(String(form.get("email")), String(form.get("password")));
    if (problem === null) {
      // Whoever had this phone before: the server says anew whose work it may show.
      phoneOwner.set(null);
      waitingSignOut.set(false);
      if (again) again();
      else window.location.assign(next);
    }
    return problem;
  }, null);
  return (
    <ActionForm action={send} className="grid gap-4">
      {justJoined ? <Notice kind="done" title="You have joined. Sign in with your password." /> : null}
      {refusal ? (
        <Notice
          kind="problem"
          title={REFUSALS[refusal] ?? "E-mail or password is not right. Check both and try again."}
        />
      ) : null}
      <TextField
        name="email"
        label="E-mail"
        type="email"
        autoComplete="username"
        required
        readOnly={again !== undefined}
        defaultValue={email}
      />
      <TextField name="password" label="Password" type="password" autoComplete="current-password" required />
      <SubmitButton busy={busy} busyText="Signing in…" wide>
        Sign in
      </SubmitButton>
    </ActionForm>
  );
}

async function signIn(email: string, password: string): Promise<string | null> {
  try {
    const { csrfToken } = await (await fetch("/api/auth/csrf")).json();
    const answer = await fetch("/api/auth/callback/credentials", {
      method: "POST",
      headers: { "content-type": "application/x-www-form-urlencoded" },
      body: new URLSearchParams({ csrfToken, email, password, json: "true", callbackUrl: "/" }),
    });
    if (answer.ok) return null;
    const { url } = await answer.json();
    return new URL(url, window.location.origin).searchParams.get("error") ?? "CredentialsSignin";
  } catch {
    return "OFFLINE";
  }
}
