import { z } from "zod";

export const workIdSchema = z.strictObject({ workId: z.uuid() });
export type WorkIdInput = z.output<typeof workIdSchema>;
