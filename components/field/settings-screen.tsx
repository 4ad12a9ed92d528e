import { Card } from "@/components/ui/card";
import { Button } from "@/components/ui/plain-button";
import type { FieldDef } from "@/lib/domain/fields";
import { leftSettings } from "@/lib/domain/left-settings";
import type { PlainValue } from "@/lib/domain/merge-fields";
import { startupField } from "@/lib/domain/startup-walk";
import { settingWords } from "./crew-card";
import { EntryField } from "./entry-field";
import { JobFrame } from "./job-frame";
import { fieldAt, SendMark } from "./send-mark";
import type { Work } from "./use-job";
import { phone } from "./use-phone";
import type { Place } from "./use-place";

type Props = { readonly work: Work; readonly go: (place: Place) => void };

/** Settings as left against settings as designed: one tap when they are the same. */
export function SettingsScreen({ work, go }: Props) {
  const { job, values, draft, state, context } = work;
  const settings = leftSettings(context);
  const open = settings.filter(({ key, designed }) => designed !== null && (values[key] ?? null) === null);
  return (
    <JobFrame
      work={work}
      go={go}
      title="Settings as left"
      bottomBar={
        <Button variant="primary" wide onClick={() => go({ job: job.id, at: "photos" })}>
          Next: photos and notes
        </Button>
      }
    >
      <div className="grid gap-4">
        <Button
          wide
          disabled={open.length === 0 || job.isSigned}
          onClick={() =>
            void phone().enterAll(
              job.id,
              Object.fromEntries(open.map(({ key, designed }) => [key, designed])),
            )
          }
        >
          {open.length === 0
            ? "Every designed setting is answered"
            : `I set the other ${open.length} as designed`}
        </Button>
        {settings.map(({ key, designed, controlKey, options }) => {
          const maker = controlKey === null ? null : (job.makerLabels[controlKey] ?? null);
          const field = startupField(key);
          const value = values[key] ?? null;
          const at = fieldAt(draft, key, state.sending, value === null);
          return (
            <Card key={key}>
              {options === null ? (
                <EntryField work={work} name={key} isFirst={false} />
              ) : (
                <div className="grid gap-2">
                  <div className="flex flex-wrap justify-between gap-2">
                    <label htmlFor={`entry-${key}`} className="font-semibold">
                      {field.label}
                    </label>
                    {at === null ? null : <SendMark at={at} />}
                  </div>
                  <select
                    id={`entry-${key}`}
                    className="control"
                    disabled={job.isSigned}
                    value={typeof value === "string" ? value : ""}
                    onChange={(event) => void phone().enter(job.id, key, event.target.value || null)}
                  >
                    <option value="">Choose…</option>
                    {options.map((one) => (
                      <option key={one}>{one}</option>
                    ))}
                  </select>
                </div>
              )}
              <p className="mt-2 flex flex-wrap items-center justify-between gap-2 text-sm">
                <span>
                  Designed: <strong>{inWords(field, designed)}</strong>
                  {maker === null ? null : (
                    <span className="block text-xs text-muted">on the control: {maker}</span>
                  )}
                </span>
                {designed === null || value !== null || job.isSigned ? (
                  <Comparison value={value} designed={designed} />
                ) : (
                  <Button onClick={() => void phone().enter(job.id, key, designed)}>As designed</Button>
                )}
              </p>
            </Card>
          );
        })}
      </div>
    </JobFrame>
  );
}

function Comparison({ value, designed }: { readonly value: PlainValue; readonly designed: PlainValue }) {
  if (value === null || designed === null) return null;
  return value === designed ? (
    <span className="font-semibold text-meets">as designed</span>
  ) : (
    <span className="font-semibold text-short">differs from design</span>
  );
}

function inWords(field: FieldDef, value: PlainValue): string {
  return settingWords(value, field.kind === "number" ? field.unit : "") ?? "not decided";
}
