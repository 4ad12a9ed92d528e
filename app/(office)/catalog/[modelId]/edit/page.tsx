import type { Metadata } from "next";
import { EquipmentForm } from "@/components/catalog/equipment-form";
import { PageHeader } from "@/components/shell/page-header";
import { load, pageScope } from "@/lib/server/page";
import { equipmentView } from "@/lib/services/catalog";
import { keepEquipment } from "../../actions";

export const metadata: Metadata = { title: "Edit equipment" };

type Props = { readonly params: Promise<{ readonly modelId: string }> };

export default async function EditEquipmentPage({ params }: Props) {
  const scope = await pageScope("catalog.edit");
  const model = await load(equipmentView(scope, (await params).modelId));
  return (
    <>
      <PageHeader
        title={`Edit ${model.maker} ${model.name}`}
        crumbs={[
          { href: "/catalog", label: "Catalog" },
          { href: `/catalog/${model.id}`, label: model.name },
        ]}
        lead={`Saving makes version ${model.version + 1}.`}
      />
      <EquipmentForm model={model} send={keepEquipment} />
    </>
  );
}
