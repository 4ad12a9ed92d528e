import { z } from "zod";

export const holdForecastSchema = z.strictObject({ jobId: z.uuid(), importId: z.uuid() });
