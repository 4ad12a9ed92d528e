import { Button } from "@/components/ui/button";
import { CheckField, type Choice, SelectField } from "@/components/ui/choice-fields";
import { TextField } from "@/components/ui/text-field";
import { STAGE_NAMES, STAGES } from "@/lib/domain/stages";
import { VERDICTS } from "@/lib/engineering/findings";

type Props = {
  readonly search: string;
  readonly stage: string | null;
  readonly verdict: string | null;
  readonly tech: string | null;
  readonly attention: boolean;
  readonly techs: readonly Choice[];
};

/** A plain form whose answers stand in the address, so that a view can be bookmarked and sent. */
export function JobsFilter({ search, stage, verdict, tech, attention, techs }: Props) {
  const any: Choice = { value: "", label: "any" };
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
          className="col-span-2 md:col-span-1 lg:w-56"
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
          className="lg:w-52"
        />
        <CheckField name="attention" label="Needs attention" value="1" defaultChecked={attention} />
        <Button type="submit">Show</Button>
      </form>
    </search>
  );
}
