import { z } from "zod";

const words = (label: string, max: number) =>
  z
    .string({ error: `${label}: enter text.` })
    .trim()
    .max(max, { error: `${label} is longer than ${max} characters. Shorten it.` });

/** A line break would end the subject of a mail. */
const line = (label: string, max: number) =>
  words(label, max).overwrite((text) => text.replaceAll(/\s+/g, " "));

const emptyOr = (schema: z.ZodType<string, string>, error: string) =>
  z
    .string({ error })
    .trim()
    .max(200, { error })
    .refine((text) => text === "" || schema.safeParse(text).success, { error });

const MAX_ADDRESS_LINES = 4;

const addressLines = z
  .string({ error: "Address: enter text." })
  .transform((text) =>
    text
      .split(/\r?\n/)
      .map((one) => one.trim())
      .filter((one) => one !== ""),
  )
  .pipe(
    z
      .array(line("Each line of the address", 100))
      .max(MAX_ADDRESS_LINES, { error: `Address: use at most ${MAX_ADDRESS_LINES} lines.` }),
  );

/** A whole number of years or months, or nothing. */
const span = (label: string, unit: string, max: number) => {
  const error = `${label}: enter whole ${unit} from 1 to ${max}, or leave it empty.`;
  return z
    .union(
      [
        z.literal("").transform(() => null),
        z.null(),
        z.coerce.number({ error }).int({ error }).min(1, { error }).max(max, { error }),
      ],
      { error },
    )
    .default(null);
};

/** `#rgb` or `#rrggbb`, kept as `#rrggbb` in small letters. */
const accentColor = z
  .string({ error: "Accent color: enter a color such as #1f4f7a." })
  .trim()
  .toLowerCase()
  .regex(/^#([0-9a-f]{3}|[0-9a-f]{6})$/, {
    error: "Accent color: enter # and six digits or letters a to f, such as #1f4f7a.",
  })
  .transform((color) => (color.length === 4 ? color.replace(/[0-9a-f]/g, "$&$&") : color));

/** How a company appears on screens and paper. The logo is sent apart, as a file. */
export const brandSchema = z.strictObject({
  displayName: line("Name shown", 80).min(1, { error: "Name shown is needed." }),
  licenseLine: line("License line", 160),
  phone: line("Phone", 40),
  email: emptyOr(z.email(), "E-mail: enter an address such as office@example.com, or leave it empty."),
  website: emptyOr(
    z.url({ protocol: /^https?$/, hostname: /\./ }),
    "Website: enter the full address such as https://example.com, or leave it empty.",
  ),
  addressLines,
  accentColor,
  coverWords: words("Words on the first page", 1_200).default(""),
  closingWords: words("Words at the end", 1_200).default(""),
  coverWordsEs: words("Words on the first page, in Spanish", 1_200).default(""),
  closingWordsEs: words("Words at the end, in Spanish", 1_200).default(""),
  termsWords: words("What warranty and maintenance cover", 1_200).default(""),
  termsWordsEs: words("What warranty and maintenance cover, in Spanish", 1_200).default(""),
  paper: z.enum(["letter", "a4"], { error: "Paper: choose Letter or A4." }).default("letter"),
  coverStyle: z.enum(["ledger", "band"], { error: "First page: choose one." }).default("ledger"),
  partsWarrantyYears: span("Parts warranty", "years", 50),
  laborWarrantyYears: span("Labor warranty", "years", 50),
  maintenanceMonths: span("Maintenance", "months", 60),
  /** What the form was opened with, so that nobody saves over what another owner has saved since. */
  startedFrom: z.string().max(64).optional(),
});
export type BrandInput = z.output<typeof brandSchema>;
