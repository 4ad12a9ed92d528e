import type { Metadata } from "next";
import { ImportTable } from "@/components/catalog/import-table";
import { PageHeader } from "@/components/shell/page-header";
import { load, pageScope } from "@/lib/server/page";
import { equipmentView } from "@/lib/services/catalog";
import { keepTable, takeVersionBack } from "../../actions";

export const metadata: Metadata = { title: "Paste a table" };

type Props = { readonly params: Promise<{ readonly modelId: string }> };

export default async function ImportTablePage({ params }: Props) {
  const scope = await pageScope("catalog.edit");
  const model = await load(equipmentView(scope, (await params).modelId));
  return (
    <>
      <PageHeader
        title="Paste a table"
        crumbs={[
          { href: "/catalog", label: "Catalog" },
          { href: `/catalog/${model.id}`, label: `${model.maker} ${model.name}` },
        ]}
        lead={`For ${model.maker} ${model.name}. An import makes a new version; jobs keep theirs.`}
      />
      <ImportTable model={model} send={keepTable} takeBack={takeVersionBack} />
    </>
  );
}
