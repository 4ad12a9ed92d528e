"use client";

import { phoneOwner } from "@/lib/offline/owner";

type Props = {
  readonly companies: readonly { readonly value: string; readonly label: string }[];
  readonly current: string;
  readonly choose: (tenantId: string) => Promise<void>;
};

/** For a person who works for several companies: which one's books are open. */
export function CompanySwitcher({ companies, current, choose }: Props) {
  const open = async (select: HTMLSelectElement) => {
    // The field screens follow: what they hold of this company is put away.
    phoneOwner.set(null);
    await choose(select.value);
    // Until the other books are open the tab shows these, also when the person stays for what is not saved yet.
    select.value = current;
    // Loaded anew, because what a tab sends belongs to the company it was loaded for.
    window.location.assign("/");
  };
  return (
    <div>
      <label htmlFor="company" className="mb-1 block text-xs text-muted">
        Company
      </label>
      <select
        id="company"
        name="tenantId"
        defaultValue={current}
        className="control min-h-11 w-full"
        onChange={(event) => void open(event.currentTarget)}
      >
        {companies.map((one) => (
          <option key={one.value} value={one.value}>
            {one.label}
          </option>
        ))}
      </select>
    </div>
  );
}
