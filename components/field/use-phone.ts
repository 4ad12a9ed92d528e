import { useSyncExternalStore } from "react";
import { networkDoors } from "@/lib/offline/doors";
import { withEarlyBundle } from "@/lib/offline/early-bundle";
import { phoneOwner, unsentNote, waitingSignOut } from "@/lib/offline/owner";
import { createPhone, type Phone } from "@/lib/offline/phone";
import { type PhoneState, STARTING } from "@/lib/offline/phone-state";
import { afterSigningOut, signOutAtServer } from "@/lib/offline/signing-out";
import { openFieldStore } from "@/lib/offline/store";

let made: Phone | null = null;

/** The one phone of this page. */
export function phone(): Phone {
  made ??= makePhone();
  return made;
}

/** What the phone holds, drawn again whenever that changes. */
export function usePhone(): PhoneState {
  return useSyncExternalStore(
    (listener) => phone().subscribe(listener),
    () => phone().state(),
    () => STARTING,
  );
}

function makePhone(): Phone {
  const others = new BroadcastChannel("dewledger-field");
  const own = createPhone({
    store: openFieldStore(),
    doors: afterSigningOut(
      networkDoors(withEarlyBundle((input, init) => fetch(input, init))),
      waitingSignOut,
      signOutAtServer,
    ),
    newId: () => crypto.randomUUID(),
    now: () => new Date(),
    owner: phoneOwner,
    unsent: unsentNote,
    alone: async (work) => {
      // A browser without locks sends anyway: the server knows a repeat by its id.
      if (!("locks" in navigator)) return work();
      await navigator.locks.request("dewledger-field-send", { ifAvailable: true }, async (lock) => {
        if (lock) await work();
      });
    },
    tellOthers: () => others.postMessage("kept"),
  });
  others.onmessage = () => void own.reload();
  return own;
}
