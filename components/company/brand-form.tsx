"use client";

import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { FormActions, FormSection } from "@/components/forms/form-section";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { RadioRow } from "@/components/ui/choice-fields";
import { Notice } from "@/components/ui/notice";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextArea, TextField } from "@/components/ui/text-field";
import { PACKET_PAPER_NAMES, PACKET_PAPERS, type PacketPaper } from "@/lib/domain/packets";
import { AccentField } from "./accent-field";

type Brand = {
  readonly startedFrom: string;
  readonly displayName: string;
  readonly licenseLine: string;
  readonly phone: string;
  readonly email: string;
  readonly website: string;
  readonly addressText: string;
  readonly accentColor: string;
  readonly coverWords: string;
  readonly closingWords: string;
  readonly coverWordsEs: string;
  readonly closingWordsEs: string;
  readonly termsWords: string;
  readonly termsWordsEs: string;
  readonly paper: PacketPaper;
  readonly coverStyle: "ledger" | "band";
  readonly partsWarrantyYears: number | null;
  readonly laborWarrantyYears: number | null;
  readonly maintenanceMonths: number | null;
};
const WORDS = [
  { name: "coverWords", label: "Words on the first page" },
  { name: "coverWordsEs", label: "Words on the first page, in Spanish" },
  { name: "closingWords", label: "Words at the end" },
  { name: "closingWordsEs", label: "Words at the end, in Spanish" },
] as const;
const TERMS_WORDS = [
  { name: "termsWords", label: "What warranty and maintenance cover" },
  { name: "termsWordsEs", label: "What warranty and maintenance cover, in Spanish" },
] as const;
const TERMS = [
  { name: "partsWarrantyYears", label: "Parts warranty, years" },
  { name: "laborWarrantyYears", label: "Labor warranty, years" },
  { name: "maintenanceMonths", label: "Maintenance every, months" },
] as const;

type Props = {
  readonly brand: Brand;
  readonly save: (input: unknown) => Promise<Answer>;
  readonly formId: string;
};

/** How the company appears on screens and packets. */
export function BrandForm({ brand, save, formId }: Props) {
  const [sent, send, busy] = useSentForm((form) => save(Object.fromEntries(form)));
  const problem = (field: string) => problemOf(problemsOf(sent), field);
  return (
    <ActionForm id={formId} action={send} className="grid gap-6">
      <Refusal form={sent} />
      <input type="hidden" name="startedFrom" value={brand.startedFrom} />
      <FormSection title="Who you are">
        <TextField
          name="displayName"
          label="Name shown"
          required
          autoComplete="organization"
          defaultValue={brand.displayName}
          error={problem("displayName")}
        />
        <TextField
          name="licenseLine"
          label="License line"
          optional
          hint="As your state wants it printed on paper that leaves the company."
          defaultValue={brand.licenseLine}
          error={problem("licenseLine")}
        />
      </FormSection>
      <FormSection title="How customers reach you">
        <TextField
          name="phone"
          label="Phone"
          type="tel"
          autoComplete="tel"
          optional
          defaultValue={brand.phone}
          error={problem("phone")}
        />
        <TextField
          name="email"
          label="E-mail"
          type="email"
          autoComplete="email"
          optional
          defaultValue={brand.email}
          error={problem("email")}
        />
        <TextField
          name="website"
          label="Website"
          type="url"
          autoComplete="url"
          optional
          hint="The full address, such as https://example.com"
          defaultValue={brand.website}
          error={problem("website")}
        />
        <TextArea
          name="addressLines"
          label="Address"
          optional
          hint="At most 4 lines."
          autoComplete="street-address"
          defaultValue={brand.addressText}
          error={problem("addressLines")}
        />
      </FormSection>
      <fieldset className="min-w-0 border-t border-rule pt-3">
        <legend className="float-left mb-2 w-full font-semibold">Color</legend>
        <div className="clear-both">
          <AccentField color={brand.accentColor} error={problem("accentColor")} />
        </div>
      </fieldset>
      <FormSection title="Packets">
        <RadioRow
          name="paper"
          label="Paper"
          options={PACKET_PAPERS.map((value) => ({ value, label: PACKET_PAPER_NAMES[value] }))}
          defaultValue={brand.paper}
          error={problem("paper")}
        />
        <RadioRow
          name="coverStyle"
          label="First page"
          options={[
            { value: "ledger", label: "open, ruled" },
            { value: "band", label: "band of your color" },
          ]}
          defaultValue={brand.coverStyle}
          error={problem("coverStyle")}
        />
        {WORDS.map((one) => (
          <TextArea
            key={one.name}
            {...one}
            optional
            defaultValue={brand[one.name]}
            error={problem(one.name)}
          />
        ))}
      </FormSection>
      <FormSection title="Standard terms, counted from the signed startup">
        {TERMS.map(({ name, label }) => (
          <TextField
            key={name}
            name={name}
            label={label}
            inputMode="numeric"
            optional
            defaultValue={brand[name] ?? ""}
            error={problem(name)}
          />
        ))}
        {TERMS_WORDS.map((one) => (
          <TextArea
            key={one.name}
            {...one}
            optional
            defaultValue={brand[one.name]}
            error={problem(one.name)}
          />
        ))}
      </FormSection>
      <FormActions>
        <SubmitButton busy={busy}>Save</SubmitButton>
        {sent.state === "done" && !busy ? (
          <Notice kind="done" title="Saved. Screens and new packets show it from now on." />
        ) : null}
      </FormActions>
    </ActionForm>
  );
}
