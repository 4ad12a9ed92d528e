import { FormSection } from "@/components/forms/form-section";
import { SelectField } from "@/components/ui/choice-fields";

/** The channels a person is asked for; the rest is optional and told by headings. */
const CHANNELS = [
  { channel: "indoorF", label: "Indoor temperature", units: ["°F", "°C"] },
  { channel: "indoorRhPct", label: "Indoor relative humidity", units: ["%"] },
  { channel: "outdoorF", label: "Outdoor temperature", units: ["°F", "°C"] },
  { channel: "outdoorRhPct", label: "Outdoor relative humidity", units: ["%"] },
] as const;

const ORDERS = [
  { value: "", label: "told from the file" },
  { value: "year-month-day", label: "year, month, day" },
  { value: "month-day-year", label: "month, day, year" },
  { value: "day-month-year", label: "day, month, year" },
];

/** Which column is which, asked once a logger. */
export function LogMappingFields({ headings }: { readonly headings: readonly string[] }) {
  const columns = headings.map((heading) => ({ value: heading, label: heading }));
  return (
    <FormSection title="Which column is which?">
      <SelectField
        name="map.time"
        label="Date and time"
        options={columns}
        placeholder="Choose…"
        defaultValue=""
      />
      <SelectField name="map.order" label="Order of the date" options={ORDERS} defaultValue="" />
      {CHANNELS.flatMap(({ channel, label, units }) => [
        <SelectField
          key={channel}
          name={`map.${channel}`}
          label={label}
          options={columns}
          placeholder="not in the file"
          defaultValue=""
        />,
        <SelectField
          key={`${channel} unit`}
          name={`unit.${channel}`}
          label={`${label} is in`}
          options={units.map((unit) => ({ value: unit, label: unit }))}
          defaultValue={units[0]}
        />,
      ])}
    </FormSection>
  );
}

/** The mapping the person chose, or `null` when none was asked for. */
export function mappingFrom(form: FormData) {
  const time = form.get("map.time");
  if (typeof time !== "string" || time === "") return null;
  const columns = CHANNELS.flatMap(({ channel }) => {
    const heading = form.get(`map.${channel}`);
    return typeof heading === "string" && heading !== ""
      ? [{ heading, channel, unit: String(form.get(`unit.${channel}`)) }]
      : [];
  });
  return {
    version: 1,
    timeHeading: time,
    timeOfDayHeading: null,
    dateOrder: form.get("map.order") || null,
    columns,
    onlyWhere: null,
  };
}
