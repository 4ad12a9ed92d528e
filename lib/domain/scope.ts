import type { TenantId, UserId } from "./ids";
import type { Role } from "./roles";

declare const verified: unique symbol;

/**
 * Proof that a request comes from a member of one company. Only `lib/auth` makes one, after it has
 * checked the session or token against the database; the brand cannot be written as a literal.
 */
export type TenantScope = {
  readonly tenantId: TenantId;
  readonly userId: UserId;
  readonly role: Role;
  /** Changes when the member's role changes or the member is removed. */
  readonly membershipVersion: number;
  /** The API token that asks in the member's name; absent when the member asks. The trail names it. */
  readonly tokenName?: string;
  readonly [verified]: true;
};
