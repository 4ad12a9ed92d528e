import { z } from "zod";
import { longerThan, outsideRange } from "./field-range";
import { type FieldDef, type FieldDefs, type InputsOf, type NumberFieldDef, readUnit } from "./fields";
import { isoDay } from "./iso-day";
import { readQuantityText } from "./quantity-text";

/** The zod schema of a set of fields: every field may be missing, none may be wrong. */
export function schemaOfFields<F extends FieldDefs>(fields: F): z.ZodType<InputsOf<F>> {
  const shape = Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, fieldSchema(field)]));
  return z.strictObject(shape) as unknown as z.ZodType<InputsOf<F>>;
}

/** The zod schema of one field's value. */
export function fieldSchema(field: FieldDef): z.ZodType {
  switch (field.kind) {
    case "number":
      return numberSchema(field);
    case "choice":
      return emptyIsNull(
        z.enum(
          field.options.map((option) => option.value),
          {
            error: `${field.label}: choose one of ${field.options.map((option) => option.label).join(", ")}.`,
          },
        ),
      );
    case "yes-no":
      return emptyIsNull(z.boolean({ error: `${field.label}: answer yes or no.` }));
    case "text":
      return emptyIsNull(
        z.string({ error: `${field.label}: enter text.` }).max(field.maxLength, {
          error: longerThan(field),
        }),
      );
    case "date":
      return emptyIsNull(isoDay(`${field.label}: enter a date such as 2026-07-31.`));
    case "reference":
      return emptyIsNull(z.string({ error: `${field.label}: choose one from the list.` }).max(200));
  }
}

function emptyIsNull(schema: z.ZodType): z.ZodType {
  return z.preprocess(
    (given) => (given === undefined || (typeof given === "string" && given.trim() === "") ? null : given),
    schema.nullable(),
  );
}

function numberSchema(field: NumberFieldDef): z.ZodType {
  return z
    .unknown()
    .optional()
    .transform((given, context): number | null => {
      if (given === null || given === undefined) return null;
      const read =
        typeof given === "number"
          ? ({ ok: true, value: given } as const)
          : typeof given === "string"
            ? readQuantityText(given, readUnit(field))
            : ({ ok: false, problem: "Enter a number." } as const);
      if (!read.ok) {
        context.addIssue({ code: "custom", message: `${field.label}: ${read.problem}` });
        return z.NEVER;
      }
      if (read.value === null) return null;
      if (!(read.value >= field.min && read.value <= field.max)) {
        context.addIssue({ code: "custom", message: outsideRange(field, read.value) });
        return z.NEVER;
      }
      return read.value;
    });
}
