import { Button } from "@/components/ui/button";
import { type Choice, SelectField } from "@/components/ui/choice-fields";
import { DateField } from "@/components/ui/text-field";
import {
  COMPARED,
  COMPARED_KEYS,
  MEASURE_KEYS,
  MEASURES,
  OUTCOME_COUNTED_KEYS,
  OUTCOMES_COUNTED,
} from "@/lib/domain/across-jobs";
import type { AcrossJobsQuery } from "@/lib/schemas/across-jobs";

const choices = (
  keys: readonly string[],
  labels: Readonly<Record<string, { readonly label: string }>>,
): readonly Choice[] => keys.map((value) => ({ value, label: labels[value]?.label ?? value }));

/** The question: what is counted, by what, and for which jobs. It goes into the address. */
export function QuestionForm({
  query,
  equipment,
}: {
  readonly query: AcrossJobsQuery;
  readonly equipment: readonly Choice[];
}) {
  return (
    <form
      action="/across-jobs"
      className="no-print grid gap-x-4 gap-y-3 border border-rule bg-sheet p-4 sm:grid-cols-2 lg:grid-cols-3"
      aria-label="Question"
    >
      <SelectField
        name="outcome"
        label="Count"
        defaultValue={query.outcome}
        options={choices(OUTCOME_COUNTED_KEYS, OUTCOMES_COUNTED)}
      />
      <SelectField
        name="by"
        label="By"
        placeholder="what goes with it"
        defaultValue={query.by ?? ""}
        options={choices(COMPARED_KEYS, COMPARED)}
      />
      <SelectField
        name="measure"
        label="And draw"
        placeholder="nothing"
        defaultValue={query.measure ?? ""}
        options={choices(MEASURE_KEYS, MEASURES)}
      />
      <DateField name="from" label="Startups from" optional defaultValue={query.from ?? ""} />
      <DateField name="to" label="To" optional defaultValue={query.to ?? ""} />
      <SelectField
        name="equipment"
        label="Equipment"
        placeholder="all"
        defaultValue={query.equipment ?? ""}
        options={equipment}
      />
      <div className="sm:col-span-2 lg:col-span-3">
        <Button type="submit" variant="primary">
          Ask
        </Button>
      </div>
    </form>
  );
}
