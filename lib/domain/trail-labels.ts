import { API_ACCESS, API_ACCESS_KEYS } from "./api-tokens";
import type { FieldDef } from "./fields";
import { isLimitKey, limitDefinition } from "./limits";
import { type OptionField, optionFields } from "./options/fields";
import { PACKET_PAPER_NAMES, PACKET_PAPERS } from "./packets";
import { ROLE_NAMES, ROLES } from "./roles";
import { STAGE_FIELDS, STAGE_NAMES, STAGES } from "./stages";

const group = "";
const text = (label: string): FieldDef => ({ kind: "text", label, group, maxLength: 2_000 });
const day = (label: string): FieldDef => ({ kind: "date", label, group });
const whole = (label: string, unit = ""): FieldDef => ({
  kind: "number",
  label,
  group,
  unit,
  min: Number.NEGATIVE_INFINITY,
  max: Number.POSITIVE_INFINITY,
  decimals: 0,
});

/** What the trail tells of besides stage records and limits. A part of an object is written `object.part`. */
const LABELS: Readonly<Record<string, FieldDef>> = {
  role: {
    kind: "choice",
    label: "Role",
    group,
    options: ROLES.map((role) => ({ value: role, label: ROLE_NAMES[role] })),
  },
  displayName: text("Name shown"),
  licenseLine: text("License line"),
  phone: text("Phone"),
  email: text("E-mail"),
  website: text("Website"),
  addressLines: text("Address"),
  accentColor: text("Accent color"),
  coverWords: text("Words on the first page"),
  closingWords: text("Words at the end"),
  coverWordsEs: text("Words on the first page, in Spanish"),
  closingWordsEs: text("Words at the end, in Spanish"),
  termsWords: text("What warranty and maintenance cover"),
  termsWordsEs: text("What warranty and maintenance cover, in Spanish"),
  paper: {
    kind: "choice",
    label: "Paper",
    group,
    options: PACKET_PAPERS.map((value) => ({ value, label: PACKET_PAPER_NAMES[value] })),
  },
  coverStyle: text("First page"),
  partsWarrantyYears: whole("Parts warranty", "years"),
  laborWarrantyYears: whole("Labor warranty", "years"),
  maintenanceMonths: whole("Maintenance every", "months"),
  logo: text("Logo"),
  maker: text("Maker"),
  name: text("Name"),
  rows: whole("Rows of performance data"),
  number: whole("Job number"),
  title: text("Title"),
  "customer.name": text("Customer"),
  "customer.email": text("Customer's e-mail"),
  "customer.phone": text("Customer's phone"),
  "home.addressLine": text("Street address"),
  "home.city": text("City"),
  "home.region": text("State"),
  "home.postalCode": text("ZIP code"),
  "home.builder": text("Builder"),
  "home.elevationFt": whole("Elevation", "ft"),
  weatherFileId: { kind: "reference", label: "Weather file", group, to: "equipment" },
  startupDue: day("Startup due"),
  reviewDue: day("Review due"),
  techIds: { kind: "reference", label: "Assigned techs", group, to: "equipment" },
  label: text("Name"),
  revision: whole("Revision"),
  verdict: text("Verdict"),
  dryHours: whole("Dry-hours", "h"),
  livedHoursAboveLimit: whole("Above the limit, lived", "h"),
  forecastHoursAboveLimit: whole("Above the limit, forecast", "h"),
  option: text("Option"),
  through: text("Through"),
  access: {
    kind: "choice",
    label: "May",
    group,
    options: API_ACCESS_KEYS.map((value) => ({ value, label: API_ACCESS[value].label })),
  },
  expiresAt: day("Until"),
};

/** How the value under a key of an entry is named and written; `null` when nothing here knows the key. */
export function findTrailField(action: string, entity: string, key: string): FieldDef | null {
  if (entity === "stage record") {
    const stage = STAGES.find((one) => action.startsWith(STAGE_NAMES[one]));
    const field = stage ? STAGE_FIELDS[stage][key] : undefined;
    if (field) return field;
  }
  if (entity === "option" && Object.hasOwn(optionFields, key)) return optionFields[key as OptionField];
  if (entity === "rule limits" && isLimitKey(key)) {
    const { title, unit, min, max, decimals } = limitDefinition(key);
    return { kind: "number", label: title, group, unit, min, max, decimals };
  }
  return Object.hasOwn(LABELS, key) ? (LABELS[key] ?? null) : null;
}
