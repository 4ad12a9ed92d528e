import type { ApiEndpoint } from "@/lib/domain/api-endpoint";
import { addCallback, listCallbacks } from "./callbacks";
import { listJobs, listPackets, readFindings, readLedger } from "./jobs";
import { followLog, sendLog } from "./logs";

export { addCallback, listCallbacks } from "./callbacks";
export { listJobs, listPackets, readFindings, readLedger } from "./jobs";
export { followLog, sendLog } from "./logs";

/** Where the first version of the API stands. A change that would break a caller is a new version beside it. */
export const API_BASE = "/api/v1";

/** Every door, in the order of its description. */
export const API_ENDPOINTS: readonly ApiEndpoint[] = [
  listJobs,
  readLedger,
  readFindings,
  listPackets,
  listCallbacks,
  addCallback,
  sendLog,
  followLog,
];
