"use client";

import { useRouter } from "next/navigation";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { FieldFrame, fieldIds } from "@/components/forms/field-frame";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { Button } from "@/components/ui/button";
import { SubmitButton } from "@/components/ui/submit-button";

type Props = {
  readonly logoHref: string | null;
  readonly takeOff: (input: unknown) => Promise<Answer>;
};

const NOTHING_CHOSEN = "Choose a picture file first.";

/** Shows the logo and takes another. The file itself is the body of the request. */
export function LogoForm({ logoHref, takeOff }: Props) {
  const router = useRouter();
  const [sent, send, busy] = useSentForm(
    (form) => (form.get("do") === "take off" ? takeOff({}) : upload(form.get("logo"))),
    () => router.refresh(),
  );
  const frame = {
    name: "logo",
    label: "Picture file",
    hint: "PNG, JPEG, WebP or plain SVG, at most 2 MB. It is redrawn as PNG; nothing else of the file is kept.",
    error: problemOf(problemsOf(sent), "logo"),
  };
  const ids = fieldIds(frame);
  return (
    <ActionForm action={send} className="grid gap-4">
      <Refusal form={sent} title="The logo was not changed" />
      {logoHref === null ? (
        <p className="text-sm text-muted">No logo yet. The first letter of the name stands in its place.</p>
      ) : (
        // biome-ignore lint/performance/noImgElement: a company's own small file, served as it is
        <img
          src={logoHref}
          alt="The logo in use"
          className="max-h-32 max-w-full justify-self-start border border-rule bg-white p-2"
        />
      )}
      <FieldFrame {...frame}>
        <input
          id={ids.input}
          name="logo"
          type="file"
          accept="image/png,image/jpeg,image/webp,image/svg+xml"
          className="control"
          aria-describedby={ids.describedBy}
          aria-invalid={frame.error === undefined ? undefined : true}
        />
      </FieldFrame>
      <div className="flex flex-wrap gap-3">
        <SubmitButton variant="secondary" busy={busy} name="do" value="upload">
          Use this picture
        </SubmitButton>
        {logoHref === null ? null : (
          <Button type="submit" variant="quiet" name="do" value="take off" disabled={busy}>
            Take the logo off
          </Button>
        )}
      </div>
    </ActionForm>
  );
}

async function upload(file: FormDataEntryValue | null): Promise<Answer> {
  if (!(file instanceof File) || file.size === 0) {
    return { ok: false, message: NOTHING_CHOSEN, fields: [{ field: "logo", message: NOTHING_CHOSEN }] };
  }
  const answer = await fetch("/api/brand/logo", { method: "POST", body: file });
  if (answer.ok) return { ok: true };
  const { message, fields } = await answer.json();
  return { ok: false, message, fields };
}
