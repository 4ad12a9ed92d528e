/** What became of a form's entries: whether all of them are kept, and in which version of the record. */
export type Settled = { readonly isSaved: boolean; readonly version: number | null };

const forms = new Map<string, () => Promise<Settled>>();

/** Forms that save themselves, by the record they fill, for what stands beside them and needs the record whole. */
export const savingForms = {
  /** Returns how to leave again. */
  register: (form: string, settle: () => Promise<Settled>): (() => void) => {
    forms.set(form, settle);
    return () => {
      if (forms.get(form) === settle) forms.delete(form);
    };
  },
  /** Saves what waits for a pause in typing. `null`: no such form is open. */
  settle: async (form: string): Promise<Settled | null> => (await forms.get(form)?.()) ?? null,
};

/** The name of a record's form. */
export function formOf(jobId: string, stage: string): string {
  return `${jobId} ${stage}`;
}
