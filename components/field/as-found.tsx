import { Card } from "@/components/ui/card";
import { Button } from "@/components/ui/plain-button";
import type { PlainValue } from "@/lib/domain/merge-fields";
import { foundKey, PAIRED_KEYS } from "@/lib/domain/stages/startup-found";
import { type StartupKey, startupField } from "@/lib/domain/startup-walk";
import type { Work } from "./use-job";
import { phone } from "./use-phone";

/** Readings as found beside readings as left, so that a correction can be seen. */
export function AsFound({ work }: { readonly work: Work }) {
  const { job, values } = work;
  const found = PAIRED_KEYS.filter((key) => (values[foundKey(key)] ?? null) !== null);
  const measured = PAIRED_KEYS.filter((key) => (values[key] ?? null) !== null);
  return (
    <Card title="As found and as left">
      {found.length === 0 ? (
        <>
          <p className="text-sm">
            About to correct something? Keep these readings as found first. Then measure again only what
            changed.
          </p>
          <Button
            wide
            className="mt-2"
            disabled={measured.length === 0 || job.isSigned}
            onClick={() =>
              void phone().enterAll(
                job.id,
                Object.fromEntries(
                  measured.map((key): [string, PlainValue] => [foundKey(key), values[key] ?? null]),
                ),
              )
            }
          >
            Keep {measured.length} readings as found
          </Button>
        </>
      ) : (
        <dl className="grid grid-cols-[1fr_auto_auto] gap-x-3 gap-y-1 text-sm">
          <dt className="text-muted">Reading</dt>
          <dd className="text-right text-muted">found</dd>
          <dd className="text-right text-muted">left</dd>
          {found.map((key) => {
            const isChanged = values[key] !== values[foundKey(key)];
            return (
              <div key={key} className="contents">
                <dt>{startupField(key).label}</dt>
                <dd className="text-right">{words(key, values[foundKey(key)] ?? null)}</dd>
                <dd className="text-right font-semibold">
                  {isChanged ? words(key, values[key] ?? null) : "same"}
                </dd>
              </div>
            );
          })}
        </dl>
      )}
    </Card>
  );
}

function words(key: StartupKey, value: PlainValue): string {
  const field = startupField(key);
  return value === null ? "—" : `${value} ${field.kind === "number" ? field.unit : ""}`.trim();
}
