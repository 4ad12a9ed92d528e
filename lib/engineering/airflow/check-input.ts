import type { LimitValues } from "../limit-definition";
import type { airflowLimits } from "./limits";

export type AirflowLimitValues = LimitValues<typeof airflowLimits>;

/** Which stage a check speaks of, and the start of its input names, such as `stages.0.`. */
export type StageName = { readonly stage: string; readonly fieldPrefix: string };
