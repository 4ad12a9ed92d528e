import { sendLog } from "@/lib/schemas/api";
import { apiRoute } from "@/lib/server/api-route";
import { apiSendLog } from "@/lib/services/api/logs";

export const POST = apiRoute(sendLog, (scope, { params, query, body, sending }) =>
  apiSendLog(scope, { ...query, ...params, bytes: body }, sending),
);
