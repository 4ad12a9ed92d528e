import { z } from "zod";

export const askForExportSchema = z.strictObject({});

export const deleteCompanySchema = z.strictObject({
  companyName: z.string().max(200),
  password: z.string().min(1, "Enter your password.").max(200),
});
export type DeleteCompanyInput = z.output<typeof deleteCompanySchema>;
