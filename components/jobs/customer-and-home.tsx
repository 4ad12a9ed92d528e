import { FormSection } from "@/components/forms/form-section";
import { NumberField } from "@/components/ui/number-field";
import { TextField } from "@/components/ui/text-field";

/** The texts of a customer and a home, as a form holds them. */
export const CUSTOMER_AND_HOME = [
  "title",
  "customerName",
  "customerEmail",
  "customerPhone",
  "addressLine",
  "city",
  "region",
  "postalCode",
  "elevationFt",
  "builder",
] as const;

type Field = (typeof CUSTOMER_AND_HOME)[number];
type Props = {
  /** What stands there now; nothing in a new job. */
  readonly values?: Readonly<Record<Field, string>>;
  readonly error: (field: string) => string | undefined;
  /** What else is asked of the home. */
  readonly children?: React.ReactNode;
};

/** Who it is for and where, when a job is opened and when it is corrected. */
export function CustomerAndHome({ values, error, children }: Props) {
  const field = (name: Field) => ({
    name,
    error: error(name),
    defaultValue: values?.[name],
    autoComplete: "off",
  });
  return (
    <>
      <FormSection title="Customer">
        <TextField {...field("customerName")} label="Customer name" />
        <TextField {...field("customerPhone")} label="Phone" optional type="tel" />
        <TextField {...field("customerEmail")} label="E-mail" optional type="email" />
        <TextField {...field("title")} label="Title" optional hint="To tell two systems in one home apart." />
      </FormSection>
      <FormSection title="Home">
        <TextField {...field("addressLine")} label="Street address" />
        <TextField {...field("city")} label="City" />
        <TextField {...field("region")} label="State" />
        <TextField {...field("postalCode")} label="ZIP code" inputMode="numeric" />
        <NumberField
          {...field("elevationFt")}
          label="Elevation"
          unit="ft"
          hint="Above sea level. The town’s is near enough: 100 ft change the air by 0.4 %."
        />
        <TextField {...field("builder")} label="Builder" optional hint="Compared across jobs." />
        {children}
      </FormSection>
    </>
  );
}
