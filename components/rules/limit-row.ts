import type { LimitDefinition } from "@/lib/engineering/limit-definition";
import type { Revision } from "./limit-history";

/** A limit as the Rules page shows it. */
export type LimitRow = LimitDefinition & {
  readonly key: string;
  readonly inForce: number;
  readonly isOwn: boolean;
  readonly problem: string | null;
};

/** With what happened to it, newest first. */
export type LimitRowWithHistory = LimitRow & { readonly history: readonly Revision[] };
