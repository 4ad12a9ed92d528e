import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";

const ROOT = path.resolve(import.meta.dirname, "../..");
/** Where the tests of rules live. */
const FOLDERS = ["tests/engineering", "tests/domain"];

/** Path of a test from the project's root → the sources its expected values come from. */
export type TestSources = Readonly<Record<string, readonly string[]>>;

/**
 * Reads the sources every test of rules names in its `SOURCE` constants.
 *
 * @throws Error when such a constant is not plain text: then it could not be shown beside the rule.
 */
export function collectTestSources(): TestSources {
  const files = FOLDERS.flatMap((folder) =>
    readdirSync(path.join(ROOT, folder), { recursive: true, encoding: "utf8" }).map(
      (name) => `${folder}/${name.replaceAll("\\", "/")}`,
    ),
  )
    .filter((name) => name.endsWith(".test.ts"))
    .sort();
  return Object.fromEntries(
    files.map((file) => [file, sourcesNamedIn(file, readFileSync(path.join(ROOT, file), "utf8"))]),
  );
}

/** The texts of the constants of one file whose name is `SOURCE` or ends in `_SOURCE`, in order. */
export function sourcesNamedIn(file: string, text: string): readonly string[] {
  const parsed = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isVariableDeclaration(node) && ts.isIdentifier(node.name) && isSourceName(node.name.text)) {
      found.push(textOf(node.initializer, `${file}: ${node.name.text}`));
    }
    ts.forEachChild(node, visit);
  };
  visit(parsed);
  return found;
}

function isSourceName(name: string): boolean {
  return /^([A-Z0-9_]+_)?SOURCE(_[A-Z0-9_]+)?$/.test(name);
}

function textOf(node: ts.Expression | undefined, where: string): string {
  if (node && ts.isStringLiteralLike(node)) return node.text;
  if (node && ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.PlusToken) {
    return textOf(node.left, where) + textOf(node.right, where);
  }
  throw new Error(`${where} is not plain text. Write it as one string, or as strings joined by +.`);
}
