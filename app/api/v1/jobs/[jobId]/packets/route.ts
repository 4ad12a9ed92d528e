import { listPackets } from "@/lib/schemas/api";
import { apiRoute } from "@/lib/server/api-route";
import { apiPackets } from "@/lib/services/api/jobs";

export const GET = apiRoute(listPackets, (scope, { params }) => apiPackets(scope, params.jobId));
