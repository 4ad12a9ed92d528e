"use client";

import { useState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { RadioRow } from "@/components/ui/choice-fields";
import { Notice } from "@/components/ui/notice";
import { SubmitButton } from "@/components/ui/submit-button";
import {
  LANGUAGES_OF,
  PACKET_KIND_HINTS,
  PACKET_KIND_NAMES,
  PACKET_KINDS,
  PACKET_LANGUAGE_NAMES,
  PACKET_PAPER_NAMES,
  PACKET_PAPERS,
  type PacketKind,
  type PacketPaper,
} from "@/lib/domain/packets";

type Props = {
  readonly jobId: string;
  readonly paper: PacketPaper;
  readonly make: (input: unknown) => Promise<Answer>;
};

/** Which packet, in which language, on which paper. */
export function MakePacket({ jobId, paper, make }: Props) {
  const [kind, setKind] = useState<PacketKind>("homeowner");
  const [sent, send, busy] = useSentForm((form) =>
    make({ language: "en", ...Object.fromEntries(form), jobId }),
  );
  const problem = (field: string) => problemOf(problemsOf(sent), field);
  const languages = LANGUAGES_OF[kind];
  return (
    <ActionForm action={send} className="grid justify-items-start gap-4">
      <Refusal form={sent} title="The packet was not made" />
      <RadioRow
        name="kind"
        label="Packet"
        options={PACKET_KINDS.map((value) => ({ value, label: PACKET_KIND_NAMES[value] }))}
        hint={PACKET_KIND_HINTS[kind]}
        value={kind}
        onChange={(event) => setKind(PACKET_KINDS.find((one) => one === event.target.value) ?? kind)}
        error={problem("kind")}
      />
      <div className="flex flex-wrap gap-x-8 gap-y-4">
        {languages.length < 2 ? null : (
          <RadioRow
            name="language"
            label="Language"
            options={languages.map((value) => ({ value, label: PACKET_LANGUAGE_NAMES[value] }))}
            defaultValue="en"
            error={problem("language")}
          />
        )}
        <RadioRow
          name="paper"
          label="Paper"
          options={PACKET_PAPERS.map((value) => ({ value, label: PACKET_PAPER_NAMES[value] }))}
          defaultValue={paper}
          error={problem("paper")}
        />
      </div>
      <SubmitButton busy={busy} busyText="Making…">
        Make the packet
      </SubmitButton>
      {sent.state === "done" && !busy ? (
        <Notice kind="done" title="The packet is ready. It stands in the list below." />
      ) : null}
    </ActionForm>
  );
}
