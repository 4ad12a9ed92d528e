"use client";

import { ActionForm } from "@/components/forms/action-form";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, useSentForm } from "@/components/forms/use-sent-form";
import { Button } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import type { JobFile } from "@/lib/domain/field-bundle";
import { STAGE_FIELDS } from "@/lib/domain/stages";
import { shownValue } from "./shown-value";

type Send = (input: unknown) => Promise<Answer>;
export type LateValue = {
  readonly id: string;
  readonly fieldPath: string;
  readonly value: string | number | boolean | null;
  readonly now: string | number | boolean | null;
  readonly reason: string;
  readonly byName: string;
};
type Props = {
  readonly jobId: string;
  readonly values: readonly LateValue[];
  readonly photos: readonly JobFile[];
  readonly decideValue: Send;
  readonly decidePhoto: Send;
};

/** What came after signing, or from somebody who may not see the job any more: taken or discarded one by one. */
export function LatePanel({ jobId, values, photos, decideValue, decidePhoto }: Props) {
  if (values.length + photos.length === 0) return null;
  return (
    <Card title="Came late: take or discard">
      <ul className="grid gap-4">
        {values.map((one) => (
          <li key={one.id}>
            <Decision send={(take) => decideValue({ jobId, id: one.id, take })}>
              <p className="font-semibold">
                {STAGE_FIELDS.startup_record[one.fieldPath]?.label ?? one.fieldPath}:{" "}
                {shownValue(one.fieldPath, one.value)}
              </p>
              <p className="text-sm text-muted">
                The record says {shownValue(one.fieldPath, one.now)}. By {one.byName}, {one.reason}.
              </p>
            </Decision>
          </li>
        ))}
        {photos.map((one) => (
          <li key={one.id}>
            <Decision send={(take) => decidePhoto({ jobId, id: one.id, take })}>
              {one.widthPx === null ? (
                // Kept as the camera made it; no browser can be relied on to draw it.
                <p>
                  {one.caption === "" ? "Late photo" : one.caption}:{" "}
                  <a className="underline" href={`/api/jobs/${jobId}/photos/${one.id}?size=original`}>
                    HEIC picture, download it to see it
                  </a>
                </p>
              ) : (
                // biome-ignore lint/performance/noImgElement: private bytes, sized by the server
                <img
                  src={`/api/jobs/${jobId}/photos/${one.id}?size=small`}
                  alt={one.caption === "" ? "Late photo" : one.caption}
                  className="h-32 border border-rule"
                />
              )}
              <p className="text-sm text-muted">By {one.addedByName}</p>
            </Decision>
          </li>
        ))}
      </ul>
    </Card>
  );
}

function Decision({
  send,
  children,
}: {
  readonly send: (take: boolean) => Promise<Answer>;
  readonly children: React.ReactNode;
}) {
  const [sent, submit, busy] = useSentForm((form) => send(form.get("decision") === "take"));
  return (
    <ActionForm action={submit} className="grid gap-1 border-l-4 border-l-caution pl-3">
      <Refusal form={sent} title="Not decided" />
      {children}
      <div className="mt-1 flex gap-2">
        <Button type="submit" name="decision" value="take" busy={busy}>
          Take
        </Button>
        <Button type="submit" name="decision" value="discard" variant="quiet" busy={busy}>
          Discard
        </Button>
      </div>
    </ActionForm>
  );
}
