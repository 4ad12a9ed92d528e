import { readLedger } from "@/lib/schemas/api";
import { apiRoute } from "@/lib/server/api-route";
import { apiLedger } from "@/lib/services/api/jobs";

export const GET = apiRoute(readLedger, (scope, { params }) => apiLedger(scope, params.jobId));
