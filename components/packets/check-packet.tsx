"use client";

import { useActionState } from "react";
import { heard } from "@/components/forms/still-there";
import { Button } from "@/components/ui/button";
import { Notice } from "@/components/ui/notice";

type Found = { readonly sameBytes: boolean; readonly says: readonly string[] };
export type CheckDoor = (
  input: unknown,
) => Promise<{ readonly ok: true; readonly value: Found } | { readonly ok: false; readonly message: string }>;

type Props = {
  readonly jobId: string;
  readonly packetId: string;
  readonly name: string;
  readonly check: CheckDoor;
};

/** Prints a packet again from what was kept of it, and says whether the bytes are the same. */
export function CheckPacket({ jobId, packetId, name, check }: Props) {
  const [found, ask, busy] = useActionState(async (): Promise<Found | string> => {
    try {
      const answer = heard(await check({ jobId, packetId }));
      return answer.ok ? answer.value : answer.message;
    } catch {
      return "No connection to the server. Try again when there is one.";
    }
  }, null);
  return (
    <>
      <form action={ask}>
        <Button type="submit" variant="quiet" busy={busy} aria-label={`Print again and compare: ${name}`}>
          Print again and compare
        </Button>
      </form>
      {found === null || busy ? null : (
        <div className="w-full">
          {typeof found === "string" ? (
            <Notice kind="problem" title={found} />
          ) : (
            <Notice
              kind={found.sameBytes ? "done" : "information"}
              title={found.sameBytes ? "Same bytes" : "Not the same bytes"}
            >
              {found.says.join(" ")}
            </Notice>
          )}
        </div>
      )}
    </>
  );
}
