import { Button, LinkButton } from "@/components/ui/button";
import { TextField } from "@/components/ui/text-field";

type Props = { readonly search: string; readonly found: number; readonly mayEdit: boolean };

/** Search over all three lists, and the ways to add. The address holds the search. */
export function CatalogSearch({ search, found, mayEdit }: Props) {
  return (
    <div className="grid gap-3">
      <form method="get" className="flex flex-wrap items-end gap-3">
        <TextField name="q" label="Search the catalog" type="search" defaultValue={search} />
        <Button type="submit">Search</Button>
        {search === "" ? null : (
          <p role="status" className="pb-2 text-sm text-muted">
            {found === 1 ? "One entry fits" : `${found} entries fit`} “{search}”.
          </p>
        )}
      </form>
      {mayEdit ? (
        <div className="flex flex-wrap gap-3">
          <LinkButton href="/catalog/new">New equipment</LinkButton>
          <LinkButton href="/catalog/thermostats/new">New thermostat</LinkButton>
          <LinkButton href="/catalog/instruments/new">New instrument</LinkButton>
          <LinkButton href="/catalog/retired">Retired</LinkButton>
        </div>
      ) : null}
    </div>
  );
}
