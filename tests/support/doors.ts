import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import type { ApiEndpoint } from "@/lib/domain/api-endpoint";
import type { Permission } from "@/lib/domain/roles";

const ROOT = path.resolve(import.meta.dirname, "../..");
const METHODS = ["GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS"];

/** One way into the application: a server action or a method of a route. */
export type Door = {
  readonly file: string;
  readonly export: string;
  readonly kind: "action" | "route";
  /** What the wrapper says about it; null when it is not wrapped. */
  readonly facts: {
    readonly name: string;
    readonly permission: Permission | null;
    /** There on a door for programs, which a token opens and no sign-in. */
    readonly endpoint?: ApiEndpoint;
  } | null;
  readonly call: (...args: readonly unknown[]) => Promise<unknown>;
};

/** Files below `app` with a name. */
export function appFiles(named: RegExp): readonly string[] {
  const walk = (folder: string): string[] =>
    readdirSync(path.join(ROOT, folder), { withFileTypes: true }).flatMap((entry) => {
      const full = `${folder}/${entry.name}`;
      return entry.isDirectory() ? walk(full) : named.test(full) ? [full] : [];
    });
  return walk("app").toSorted();
}

/** Every server action and every method of every route, found in the files. */
export async function findDoors(): Promise<readonly Door[]> {
  const sources = appFiles(/\.tsx?$/).map((file) => ({
    file,
    text: readFileSync(path.join(ROOT, file), "utf8"),
  }));
  const withActions = sources.filter(({ text }) =>
    /^["']use server["'];?\s*$/m.test(text.trimStart().split("\n", 1)[0] ?? ""),
  );
  const hidden = sources.filter((one) => /["']use server["']/.test(one.text) && !withActions.includes(one));
  if (hidden.length > 0)
    throw new Error(
      `Actions inside other code cannot be found: ${hidden.map(({ file }) => file).join(", ")}`,
    );
  const doors: Door[] = [];
  for (const { file } of withActions) doors.push(...(await doorsOf(file, "action", () => true)));
  for (const { file } of sources.filter((one) => /\/route\.tsx?$/.test(one.file)))
    doors.push(...(await doorsOf(file, "route", (name) => METHODS.includes(name))));
  return doors;
}

async function doorsOf(
  file: string,
  kind: Door["kind"],
  counts: (name: string) => boolean,
): Promise<readonly Door[]> {
  const exported: Record<string, unknown> = await import(path.join(ROOT, file));
  return Object.entries(exported).flatMap(([name, value]) =>
    typeof value === "function" && counts(name)
      ? [
          {
            file,
            export: name,
            kind,
            facts: "facts" in value ? (value.facts as Door["facts"]) : null,
            call: value as Door["call"],
          },
        ]
      : [],
  );
}
