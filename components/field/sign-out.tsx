import { useState } from "react";
import { Button } from "@/components/ui/plain-button";
import { waitingSignOut } from "@/lib/offline/owner";
import { unsentCount } from "@/lib/offline/phone-state";
import { signOutAtServer } from "@/lib/offline/signing-out";
import { phone, usePhone } from "./use-phone";

/** The way out. Who still holds something that the office has not is told so first. */
export function SignOut() {
  const state = usePhone();
  const [isAsking, setIsAsking] = useState(false);
  const [hasTried, setHasTried] = useState(false);
  const count = unsentCount(state);
  if (!isAsking || count === 0) {
    return (
      <Button wide onClick={() => (count === 0 ? void signOut() : setIsAsking(true))}>
        Sign out
      </Button>
    );
  }
  return (
    <div role="alertdialog" aria-label="Sign out" className="grid gap-2 border-2 border-caution p-3">
      <p className="font-semibold">
        {count === 1 ? "One entry has" : `${count} entries have`} not been sent to the office.
      </p>
      <p>
        Signed out, {count === 1 ? "it stays" : "they stay"} on this phone unseen and{" "}
        {count === 1 ? "goes" : "go"} out only when you sign in here again.
      </p>
      {hasTried && !state.sending ? (
        <p role="status" className="font-semibold text-short">
          Not everything could be sent just now.
        </p>
      ) : null}
      <Button wide variant="primary" onClick={() => void sendThenSignOut().then(() => setHasTried(true))}>
        Send first, then sign out
      </Button>
      <Button wide variant="danger" onClick={() => void signOut()}>
        Sign out without sending
      </Button>
      <Button wide onClick={() => setIsAsking(false)}>
        Stay signed in
      </Button>
    </div>
  );
}

/** Signs out only when everything went: otherwise the question stays, with what is left. */
async function sendThenSignOut(): Promise<void> {
  await phone().send();
  if (unsentCount(phone().state()) === 0) await signOut();
}

/** What the phone holds is put away at once; without a signal the sign-in itself ends at the next contact. */
async function signOut(): Promise<void> {
  await phone().settle();
  try {
    if (!(await signOutAtServer())) waitingSignOut.set(true);
  } finally {
    await phone().forgetOwner();
    await phone().refresh();
  }
}
