"use client";

import { phoneOwner } from "@/lib/offline/owner";

type Props = {
  readonly companies: readonly { readonly value: string; readonly label: string }[];
  readonly current: string;
  readonly choose: (form: FormData) => Promise<void>;
};

/** For a person who works for several companies: which one's books are open. */
export function CompanySwitcher({ companies, current, choose }: Props) {
  return (
    <form action={choose}>
      <label htmlFor="company" className="mb-1 block text-xs text-muted">
        Company
      </label>
      <select
        id="company"
        name="tenantId"
        defaultValue={current}
        className="control min-h-11 w-full"
        onChange={(event) => {
          // The field screens follow: what they hold of this company is put away.
          phoneOwner.set(null);
          event.currentTarget.form?.requestSubmit();
        }}
      >
        {companies.map((one) => (
          <option key={one.value} value={one.value}>
            {one.label}
          </option>
        ))}
      </select>
    </form>
  );
}
