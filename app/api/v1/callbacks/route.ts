import { addCallback, listCallbacks } from "@/lib/schemas/api";
import { apiRoute } from "@/lib/server/api-route";
import { apiAddCallback, apiCallbacks } from "@/lib/services/api/callbacks";

export const GET = apiRoute(listCallbacks, (scope, { query }) => apiCallbacks(scope, query));
export const POST = apiRoute(addCallback, (scope, { body, sending }) => apiAddCallback(scope, body, sending));
