import { readdirSync, readFileSync, statSync } from "node:fs";
import path from "node:path";
import ts from "typescript";

const ROOT = path.resolve(import.meta.dirname, "../..");
const SKIPPED = new Set(["node_modules", ".next", ".git", ".data", ".tmp", "generated", "test-results"]);

export type SourceFile = {
  /** Path from the project's root, with forward slashes. */
  readonly path: string;
  readonly text: string;
  /** What it imports: a path from the root without extension, or a package name. */
  readonly imports: readonly string[];
};

/** Every TypeScript file below the given top folders, read once. */
export function sourceFiles(...tops: readonly string[]): readonly SourceFile[] {
  return tops.flatMap((top) => walk(path.join(ROOT, top))).map(read);
}

/** Every folder and file name at the top of the project that git would keep. */
export function topLevelNames(): readonly string[] {
  return readdirSync(ROOT);
}

/** Reads any file of the project as text. */
export function projectFile(relative: string): string {
  return readFileSync(path.join(ROOT, relative), "utf8");
}

function walk(folder: string): string[] {
  if (!statSync(folder, { throwIfNoEntry: false })?.isDirectory()) return [];
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (SKIPPED.has(entry.name)) return [];
    const full = path.join(folder, entry.name);
    if (entry.isDirectory()) return walk(full);
    return /\.tsx?$/.test(entry.name) && !entry.name.endsWith(".d.ts") ? [full] : [];
  });
}

function read(full: string): SourceFile {
  const text = readFileSync(full, "utf8");
  const found = ts.preProcessFile(text, true, true).importedFiles.map((file) => file.fileName);
  const relative = path.relative(ROOT, full).replaceAll("\\", "/");
  return { path: relative, text, imports: found.map((name) => resolve(relative, name)) };
}

function resolve(from: string, name: string): string {
  if (name.startsWith("@/")) return name.slice(2);
  if (name.startsWith(".")) return path.posix.normalize(path.posix.join(path.posix.dirname(from), name));
  return `package:${name}`;
}
