import { useState } from "react";
import { Card } from "@/components/ui/card";
import { Button } from "@/components/ui/plain-button";
import { keepableText, MOST_SIGNATURE } from "@/lib/domain/field-range";
import { missingNames } from "@/lib/domain/startup-walk";
import { heldFields, waiting } from "@/lib/offline/draft";
import { SendMark } from "./send-mark";
import { SignaturePaper } from "./signature-paper";
import type { Work } from "./use-job";
import { phone } from "./use-phone";

/** The customer's hand, and the tech's name under the record. Without a signal both wait on the phone. */
export function Signature({ work }: { readonly work: Work }) {
  const { job, state, draft, values } = work;
  const [name, setName] = useState(state.bundle?.personName ?? "");
  const [confirms, setConfirms] = useState(false);
  const letter = state.letters.find(
    (one) => one.jobId === job.id && one.kind === "signature" && one.state.at !== "office",
  );
  const missing = missingNames(values);
  const held = heldFields(draft).length;
  const empty = job.version === null && waiting(draft) === 0;
  return (
    <>
      <SignaturePaper work={work} />
      <Card title="Sign the record">
        {job.isSigned ? (
          <p>
            Signed by <strong>{job.signatureName}</strong>. <SendMark at="sent" />
          </p>
        ) : letter ? (
          <div className="grid gap-2">
            <p>
              Signed here by <strong>{letter.text}</strong>.{" "}
              <SendMark at={letter.state.at === "refused" ? "needs you" : "phone"} />
            </p>
            {letter.state.at === "refused" ? <p className="text-short">{letter.state.message}</p> : null}
            <Button wide onClick={() => void phone().dropLetter(letter.id)}>
              Take the signature back
            </Button>
          </div>
        ) : state.bundle?.maySign !== true ? (
          <p>The tech on the job or the owner signs this record.</p>
        ) : (
          <form
            className="grid gap-3"
            onSubmit={(event) => {
              event.preventDefault();
              if (!confirms || name.trim() === "") return;
              void phone()
                .write({ jobId: job.id, kind: "signature", questionId: null, text: name.trim() })
                .then(() => phone().send())
                .then(() => phone().refresh());
            }}
          >
            {missing.length === 0 ? null : (
              <p className="text-sm text-short">Needed before it can be signed: {missing.join(", ")}.</p>
            )}
            {held === 0 ? null : <p className="text-sm text-short">{held} of your entries need you first.</p>}
            <label htmlFor="signer" className="font-semibold">
              Your name
            </label>
            <input
              id="signer"
              className="control"
              maxLength={MOST_SIGNATURE}
              value={name}
              onChange={(event) => setName(keepableText(event.target.value))}
            />
            <label className="choice flex min-h-11 items-center gap-2">
              <input
                type="checkbox"
                className="size-6 accent-accent"
                checked={confirms}
                onChange={(event) => setConfirms(event.target.checked)}
              />
              I took these readings on this system
            </label>
            <Button
              type="submit"
              variant="primary"
              disabled={missing.length > 0 || held > 0 || empty || !confirms || name.trim() === ""}
            >
              Sign
            </Button>
            <p className="text-sm text-muted">
              It goes to the office behind the readings, as soon as there is a signal.
            </p>
          </form>
        )}
      </Card>
    </>
  );
}
