import { LinkButton, TextLink } from "@/components/ui/button";
import { CatalogPress } from "./catalog-press";
import type { Kept } from "./kept";

type Props = {
  readonly modelId: string;
  readonly versions: readonly { readonly id: string; readonly version: number; readonly retired: boolean }[];
  readonly copy: (input: unknown) => Promise<Kept<string>>;
  readonly retire: (input: unknown) => Promise<Kept<void>>;
  readonly bringBack: (input: unknown) => Promise<Kept<void>>;
};

/** What can be done with a model; an older or retired version says so first. */
export function ModelActions({ modelId, versions, copy, retire, bringBack }: Props) {
  const shown = versions.find(({ id }) => id === modelId);
  const newest = versions.find(({ retired }) => !retired);
  if (newest !== undefined && newest.id !== modelId) {
    return (
      <p>
        This is version {shown?.version}, kept for the jobs that rest on it.{" "}
        <TextLink href={`/catalog/${newest.id}`}>See version {newest.version}, the newest</TextLink>
      </p>
    );
  }
  const input = { modelId };
  if (newest === undefined) {
    return (
      <div className="grid justify-start gap-2">
        <p>This model is retired: it cannot be chosen for a new job. Jobs that rest on it keep it.</p>
        <CatalogPress input={input} send={bringBack}>
          Bring this model back
        </CatalogPress>
      </div>
    );
  }
  return (
    <div className="flex flex-wrap items-start gap-3">
      <LinkButton href={`/catalog/${modelId}/edit`}>Edit</LinkButton>
      <LinkButton href={`/catalog/${modelId}/import`}>Paste or drop a table</LinkButton>
      <CatalogPress input={input} send={copy} to="/catalog/{id}">
        Duplicate
      </CatalogPress>
      <CatalogPress input={input} send={retire} variant="danger">
        Retire
      </CatalogPress>
    </div>
  );
}
