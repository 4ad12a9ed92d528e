"use client";

import { ActionForm } from "@/components/forms/action-form";
import { useSentForm } from "@/components/forms/use-sent-form";
import { SubmitButton } from "@/components/ui/submit-button";
import { type MemberRow, ROLE_CHOICES, type Send } from "./member-actions";

type Props = { readonly member: MemberRow; readonly setRole: Send };

/** One member's role. What the server refuses, such as losing the last owner, stands under the list. */
export function MemberRoleForm({ member, setRole }: Props) {
  const [sent, send, busy] = useSentForm((form) =>
    setRole({ userId: member.userId, role: form.get("role") }),
  );
  const field = `role-${member.userId}`;
  const refused = sent.state === "refused" && !busy;
  return (
    <ActionForm action={send} className="sm:w-80">
      <div className="flex flex-wrap gap-2">
        <select
          key={member.role}
          name="role"
          aria-label={`Role of ${member.name}`}
          aria-describedby={refused ? `${field}-error` : undefined}
          aria-invalid={refused || undefined}
          className="control w-44!"
          defaultValue={member.role}
        >
          {ROLE_CHOICES.map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
        <SubmitButton variant="secondary" busy={busy} aria-label={`Change the role of ${member.name}`}>
          Change
        </SubmitButton>
      </div>
      {refused ? (
        <p id={`${field}-error`} role="alert" className="mt-1 text-sm font-semibold text-short">
          {sent.message}
        </p>
      ) : null}
      {sent.state === "done" && !busy ? (
        <p role="status" className="mt-1 text-sm text-muted">
          Changed
        </p>
      ) : null}
    </ActionForm>
  );
}
