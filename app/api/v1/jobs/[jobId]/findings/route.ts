import { readFindings } from "@/lib/schemas/api";
import { apiRoute } from "@/lib/server/api-route";
import { apiFindings } from "@/lib/services/api/jobs";

export const GET = apiRoute(readFindings, (scope, { params, query }) =>
  apiFindings(scope, params.jobId, query),
);
