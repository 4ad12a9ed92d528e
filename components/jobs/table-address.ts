export type Search = Readonly<Record<string, string | string[] | undefined>>;

const PLACE = new Set(["after", "before"]);

/** The question in the address with some parts replaced; `null` takes a part away. A page's place never stays. */
export function questionWith(asked: Search, changed: Readonly<Record<string, string | null>>): string {
  const kept = Object.entries(asked).flatMap(([key, value]) =>
    typeof value === "string" && value !== "" && !PLACE.has(key) && !(key in changed)
      ? [[key, value] as [string, string]]
      : [],
  );
  const added = Object.entries(changed).flatMap(([key, value]) =>
    value === null ? [] : [[key, value] as [string, string]],
  );
  return new URLSearchParams([...kept, ...added]).toString();
}

export function tableAddress(asked: Search, changed: Readonly<Record<string, string | null>>): string {
  return `/jobs?${questionWith(asked, changed)}`;
}
