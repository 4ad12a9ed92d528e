"use server";

import { revalidatePath } from "next/cache";
import { askForExportSchema, deleteCompanySchema } from "@/lib/schemas/company";
import { action } from "@/lib/server/action";
import { askForExport } from "@/lib/services/company-export";
import { deleteCompany } from "@/lib/services/delete-company";

export const makeExport = action({
  name: "export everything",
  permission: "company.export",
  schema: askForExportSchema,
  run: async (scope) => {
    await askForExport(scope);
    revalidatePath("/company/data");
  },
});

export const deleteEverything = action({
  name: "delete company",
  permission: "company.delete",
  schema: deleteCompanySchema,
  run: deleteCompany,
});
