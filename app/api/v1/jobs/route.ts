import { listJobs } from "@/lib/schemas/api";
import { apiRoute } from "@/lib/server/api-route";
import { apiJobs } from "@/lib/services/api/jobs";

export const GET = apiRoute(listJobs, (scope, { query }) => apiJobs(scope, query));
