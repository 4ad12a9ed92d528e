import type { LimitDefinition } from "@/lib/engineering/limit-definition";

/** A limit as the Rules page shows it. */
export type LimitRow = LimitDefinition & {
  readonly key: string;
  readonly inForce: number;
  readonly isOwn: boolean;
  readonly problem: string | null;
};
