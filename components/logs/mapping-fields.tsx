import { FormSection } from "@/components/forms/form-section";
import { SelectField } from "@/components/ui/choice-fields";
import { TextField } from "@/components/ui/text-field";
import { LOG_CHANNELS, type LogChannel } from "@/lib/engineering/logs";
import {
  DATE_ORDERS,
  type LogMapping,
  type LogPreview,
  logMappingSchema,
  unitsOf,
} from "@/lib/schemas/log-file";

const NAMES: Readonly<Record<LogChannel, string>> = {
  indoorF: "Indoor temperature",
  indoorRhPct: "Indoor relative humidity",
  outdoorF: "Outdoor temperature",
  outdoorRhPct: "Outdoor relative humidity",
  outdoorDewPointF: "Outdoor dew point",
  setpointF: "Cooling setpoint",
  firstStageShare: "First stage or cooling",
  secondStageShare: "Second stage",
  fanShare: "Fan",
  auxiliaryShare: "Auxiliary heat",
  secondIndoorF: "Second sensor, temperature",
  secondIndoorRhPct: "Second sensor, humidity",
};
/** The order in which a person is asked. */
const ASKED = Object.keys(NAMES).filter((name): name is LogChannel =>
  LOG_CHANNELS.some((one) => one === name),
);

/** Which column is which. What the headings tell is chosen already; a person looks it over. */
export function MappingFields({
  preview,
  mapping,
  timeZone,
}: {
  readonly preview: LogPreview;
  readonly mapping: LogMapping | null;
  readonly timeZone: string;
}) {
  const columns = preview.headings.map((heading) => ({ value: heading, label: heading }));
  return (
    <FormSection title="Which column is which?">
      <SelectField
        name="map.time"
        label="Date and time"
        options={columns}
        placeholder="Choose…"
        defaultValue={mapping?.timeHeading ?? ""}
      />
      <SelectField
        name="map.timeOfDay"
        label="Time of day, when it is apart"
        options={columns}
        placeholder="in the same column"
        defaultValue={mapping?.timeOfDayHeading ?? ""}
      />
      <SelectField
        name="map.order"
        label="Order of the date"
        options={DATE_ORDERS.map((order) => ({ value: order, label: order.replaceAll("-", ", ") }))}
        placeholder="told from the file"
        defaultValue={mapping?.dateOrder ?? ""}
      />
      <TextField
        name="timeZone"
        label="Clock of the logger"
        hint="A time zone such as America/Chicago, or UTC-6 for a clock that never changes."
        defaultValue={timeZone}
      />
      {preview.houses && preview.houses.names.length > 1 ? (
        <SelectField
          name="map.house"
          label={`House, by ${preview.houses.heading}`}
          options={preview.houses.names.map((name) => ({ value: name, label: name }))}
          placeholder="Choose…"
          defaultValue={mapping?.onlyWhere?.value ?? ""}
        />
      ) : null}
      {ASKED.map((channel) => {
        const chosen = mapping?.columns.find((column) => column.channel === channel);
        const units = unitsOf(channel);
        return (
          <div key={channel} className="grid grid-cols-[1fr_6.5rem] items-end gap-2">
            <SelectField
              name={`map.${channel}`}
              label={NAMES[channel]}
              options={columns}
              placeholder="not in the file"
              defaultValue={chosen?.heading ?? ""}
            />
            <SelectField
              name={`unit.${channel}`}
              label="Unit"
              aria-label={`Unit of ${NAMES[channel]}`}
              options={units.map((unit) => ({ value: unit, label: unit }))}
              defaultValue={chosen?.unit ?? units[0]}
            />
          </div>
        );
      })}
    </FormSection>
  );
}

/** The mapping in the form, or what is missing from it. */
export function mappingIn(form: FormData, preview: LogPreview): LogMapping | string {
  const text = (name: string) => String(form.get(name) ?? "");
  const house = text("map.house");
  const columns = ASKED.flatMap((channel) => {
    const heading = text(`map.${channel}`);
    return heading === "" ? [] : [{ heading, channel, unit: text(`unit.${channel}`) }];
  });
  if (text("map.time") === "") return "Choose the column with date and time.";
  if (columns.length === 0) return "Choose at least one column of readings.";
  const twice = columns.find(({ heading }, at) => columns.findIndex((one) => one.heading === heading) !== at);
  if (twice) return `“${twice.heading}” is chosen for two readings; each has a column of its own.`;
  const parsed = logMappingSchema.safeParse({
    version: 1,
    timeHeading: text("map.time"),
    timeOfDayHeading: text("map.timeOfDay") || null,
    dateOrder: text("map.order") || null,
    columns,
    onlyWhere:
      house === "" || preview.houses === null ? null : { heading: preview.houses.heading, value: house },
  });
  return parsed.success ? parsed.data : "Choose again which column holds what.";
}
