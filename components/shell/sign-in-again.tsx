"use client";

import { useEffect, useState } from "react";
import { onSignInEnded, signedInAgain } from "@/components/forms/still-there";
import { SignInForm } from "@/components/people/sign-in-form";
import { Dialog } from "@/components/ui/dialog";

/**
 * Asks for the password on the spot when a page hears that its person's sign-in has ended or somebody else has
 * signed in meanwhile. What was typed stays where it is.
 */
export function SignInAgain({ email }: { readonly email: string }) {
  const [isEnded, setEnded] = useState(false);
  useEffect(() => onSignInEnded(() => setEnded(true)), []);
  if (!isEnded) return null;
  return (
    <Dialog
      open
      onOpenChange={setEnded}
      title="Your sign-in has ended"
      description="Sign in again to go on. What you typed on this page is still here."
    >
      <SignInForm
        next=""
        email={email}
        justJoined={false}
        again={() => {
          setEnded(false);
          signedInAgain();
        }}
      />
    </Dialog>
  );
}
