import { Button, TextLink } from "@/components/ui/button";
import { CheckField, type Choice, SelectField } from "@/components/ui/choice-fields";
import { TextField } from "@/components/ui/text-field";
import { DUE_CHOICES, JOB_COLUMN_KEYS, JOB_COLUMNS } from "@/lib/domain/job-table";
import { STAGE_NAMES, STAGES } from "@/lib/domain/stages";
import { VERDICTS } from "@/lib/engineering/findings";
import type { JobListQuery } from "@/lib/schemas/job";
import { ColumnChoice } from "./column-choice";

type Props = { readonly query: JobListQuery; readonly techs: readonly Choice[] };

/** A plain form whose answers stand in the address, so that a view can be bookmarked and sent. */
export function JobsFilter({ query, techs }: Props) {
  const any: Choice = { value: "", label: "any" };
  const { search, stage, verdict, tech, attention, complaint, due, sort, way, columns } = query;
  return (
    <search>
      <form
        method="get"
        action="/jobs"
        className="no-print mb-4 grid grid-cols-2 items-end gap-3 md:grid-cols-3 lg:flex lg:flex-wrap"
      >
        <TextField
          name="search"
          label="Search"
          type="search"
          defaultValue={search}
          placeholder="number, name, street"
          className="col-span-2 md:col-span-1 lg:w-52"
        />
        <SelectField
          name="stage"
          label="Waits for"
          options={[any, ...STAGES.map((key) => ({ value: key, label: STAGE_NAMES[key] }))]}
          defaultValue={stage ?? ""}
        />
        <SelectField
          name="verdict"
          label="Verdict"
          options={[any, ...VERDICTS.map((one) => ({ value: one, label: one }))]}
          defaultValue={verdict ?? ""}
        />
        <SelectField
          name="tech"
          label="Tech"
          options={[any, ...techs]}
          defaultValue={tech ?? ""}
          className="lg:w-44"
        />
        <SelectField
          name="due"
          label="Startup due"
          options={[any, ...Object.entries(DUE_CHOICES).map(([value, label]) => ({ value, label }))]}
          defaultValue={due ?? ""}
        />
        <CheckField name="attention" label="Needs attention" value="1" defaultChecked={attention === "1"} />
        <CheckField name="complaint" label="Open callback" value="1" defaultChecked={complaint === "1"} />
        {sort === "number" ? null : <input type="hidden" name="sort" value={sort} />}
        {way === null ? null : <input type="hidden" name="way" value={way} />}
        <ColumnChoice
          shown={columns}
          choices={JOB_COLUMN_KEYS.map((key) => ({ key, label: JOB_COLUMNS[key].label }))}
        />
        <Button type="submit">Show</Button>
        <TextLink href="/jobs" className="py-2">
          Clear
        </TextLink>
      </form>
    </search>
  );
}
