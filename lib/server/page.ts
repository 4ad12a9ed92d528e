import { notFound, redirect } from "next/navigation";
import { currentScope } from "@/lib/auth/session";
import { may, type Permission } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError } from "@/lib/errors";

/** The first line of every signed-in page: who is asking, and may they. */
export async function pageScope(permission: Permission): Promise<TenantScope> {
  // A tab may still show a company that the person has left since.
  const scope = await currentScope().catch((error: unknown) => {
    if (error instanceof AppError) notFound();
    throw error;
  });
  if (!scope) redirect("/sign-in");
  if (!may(scope.role, permission)) notFound();
  return scope;
}

/** Loads a page's view; an id that is not this person's to see becomes the not-found page. */
export async function load<T>(view: Promise<T>): Promise<T> {
  try {
    return await view;
  } catch (error) {
    if (error instanceof AppError && error.code === "NOT_FOUND") notFound();
    throw error;
  }
}
