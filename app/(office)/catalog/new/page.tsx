import type { Metadata } from "next";
import { EquipmentForm } from "@/components/catalog/equipment-form";
import { PageHeader } from "@/components/shell/page-header";
import { pageScope } from "@/lib/server/page";
import { keepEquipment } from "../actions";

export const metadata: Metadata = { title: "New equipment" };

export default async function NewEquipmentPage() {
  await pageScope("catalog.edit");
  return (
    <>
      <PageHeader
        title="New equipment"
        crumbs={[{ href: "/catalog", label: "Catalog" }]}
        lead="The maker's tables are pasted or dropped afterwards."
      />
      <EquipmentForm model={null} send={keepEquipment} />
    </>
  );
}
