import { followLog } from "@/lib/schemas/api";
import { apiRoute } from "@/lib/server/api-route";
import { apiFollowLog } from "@/lib/services/api/logs";

export const GET = apiRoute(followLog, (scope, { params }) => apiFollowLog(scope, params));
