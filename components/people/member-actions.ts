import type { Answer } from "@/components/forms/use-sent-form";
import { ROLE_NAMES, ROLES } from "@/lib/domain/roles";

export type Send = (input: unknown) => Promise<Answer>;

export type MemberRow = {
  readonly userId: string;
  readonly name: string;
  readonly email: string;
  readonly role: keyof typeof ROLE_NAMES;
  readonly isYou: boolean;
};

export const ROLE_CHOICES = ROLES.map((role) => ({ value: role, label: ROLE_NAMES[role] }));
