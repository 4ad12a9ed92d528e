import ts from "typescript";
import { projectFile, sourceFiles } from "./source-files";

/** An exported function of lib/engineering as the parser sees it. */
export type EngineeringFunction = {
  readonly file: string;
  readonly name: string;
  readonly parameters: readonly { readonly name: string; readonly holdsNumbers: boolean }[];
  readonly returns: "nothing" | "numbers" | "words" | "other";
  readonly canRefuse: boolean;
  /** True when the folder's index exports it. */
  readonly isPublic: boolean;
  /** Its docstring: `null` when it has none. */
  readonly doc: Doc | null;
};

export type Doc = {
  readonly meaning: string;
  readonly params: readonly { readonly name: string; readonly text: string }[];
  readonly returns: string | null;
  readonly throws: readonly string[];
  readonly see: readonly string[];
};

type Body = { readonly throws: boolean; readonly calls: ReadonlySet<string> };
type Found = Omit<EngineeringFunction, "canRefuse" | "isPublic"> & {
  readonly exported: boolean;
  readonly body: Body;
};

/** Its constructors and `requireRange` refuse; everything else refuses when something it calls does. */
const UNITS_FILE = "lib/engineering/units.ts";

/** A number, alone or in an array, bare or branded by units.ts. */
const BRANDS = [...projectFile(UNITS_FILE).matchAll(/export type (\w+) = Quantity/g)].map((one) => one[1]);
const NUMBERS = new RegExp(`^(readonly )?(number|Float64Array|${BRANDS.join("|")})\\b`);

/** Every exported function of lib/engineering, with what can be told from its text. */
export function engineeringFunctions(): readonly EngineeringFunction[] {
  const files = sourceFiles("lib/engineering").filter((file) => file.path !== UNITS_FILE);
  const all = files.flatMap((file) => functionsIn(file.path, file.text));
  const refusing = refusals(all);
  const open = new Set(
    files
      .filter((file) => file.path.endsWith("/index.ts"))
      .flatMap((file) => exportsOfIndex(file.path, file.text)),
  );
  return all
    .filter((one) => one.exported)
    .map(({ exported: _exported, body: _body, ...one }) => ({
      ...one,
      canRefuse: refusing.has(keyOf(one)),
      isPublic: open.has(keyOf(one)),
    }));
}

function keyOf({ file, name }: { readonly file: string; readonly name: string }): string {
  return `${file}#${name}`;
}

function refusals(all: readonly Found[]): ReadonlySet<string> {
  const refusing = new Set(all.filter((one) => one.body.throws).map(keyOf));
  for (let before = -1; before !== refusing.size; ) {
    before = refusing.size;
    for (const one of all) {
      if ([...one.body.calls].some((call) => refusing.has(call))) refusing.add(keyOf(one));
    }
  }
  return refusing;
}

/** What an index re-exports, as `file#name`. */
function exportsOfIndex(path: string, text: string): readonly string[] {
  const folder = path.slice(0, path.lastIndexOf("/"));
  return parse(path, text).statements.flatMap((statement) => {
    if (!ts.isExportDeclaration(statement) || !statement.exportClause) return [];
    if (!ts.isNamedExports(statement.exportClause) || !statement.moduleSpecifier) return [];
    const file = `${folder}/${moduleName(statement.moduleSpecifier).slice(2)}.ts`;
    return statement.exportClause.elements.map((one) => `${file}#${(one.propertyName ?? one.name).text}`);
  });
}

function functionsIn(file: string, text: string): readonly Found[] {
  const parsed = parse(file, text);
  const where = importedFrom(file, parsed);
  const overloaded = new Set(
    parsed.statements.filter((one) => ts.isFunctionDeclaration(one) && !one.body).map((one) => nameOf(one)),
  );
  const seen = new Set<string>();
  return parsed.statements.flatMap((statement): Found[] => {
    const made = (
      node: ts.Node,
      name: string,
      fn: ts.FunctionDeclaration | ts.ArrowFunction | ts.FunctionExpression,
    ): Found => ({
      file,
      name,
      exported: ts.canHaveModifiers(statement)
        ? (ts.getModifiers(statement)?.some((one) => one.kind === ts.SyntaxKind.ExportKeyword) ?? false)
        : false,
      parameters: fn.parameters.map((one) => ({
        name: ts.isIdentifier(one.name) ? one.name.text : "",
        holdsNumbers: one.type
          ? !ts.isFunctionTypeNode(one.type) && /\bnumber\b/.test(one.type.getText())
          : false,
      })),
      returns: returnedBy(fn),
      doc: docOf(node),
      body: bodyOf(fn, file, where),
    });
    if (ts.isFunctionDeclaration(statement)) {
      const name = nameOf(statement);
      // Of an overloaded function the first signature carries the docstring, the last the body.
      if (!overloaded.has(name)) return [made(statement, name, statement)];
      if (seen.has(name)) return [];
      seen.add(name);
      const last = parsed.statements.findLast((one) => nameOf(one) === name);
      return [{ ...made(statement, name, statement), body: bodyOf(last ?? statement, file, where) }];
    }
    if (!ts.isVariableStatement(statement)) return [];
    return statement.declarationList.declarations.flatMap((one) =>
      ts.isIdentifier(one.name) && one.initializer && isFunction(one.initializer)
        ? [made(statement, one.name.text, one.initializer)]
        : [],
    );
  });
}

function returnedBy(fn: ts.SignatureDeclaration): EngineeringFunction["returns"] {
  const type = fn.type?.getText() ?? "";
  if (type === "void") return "nothing";
  if (/^(readonly )?(string|Figure)\b/.test(type)) return "words";
  return NUMBERS.test(type) ? "numbers" : "other";
}

/** Imported name → the file it comes from, for files of lib/engineering. */
function importedFrom(file: string, parsed: ts.SourceFile): ReadonlyMap<string, string> {
  const folder = file.slice(0, file.lastIndexOf("/"));
  const pairs = parsed.statements.filter(ts.isImportDeclaration).flatMap((statement) => {
    const bindings = statement.importClause?.namedBindings;
    const name = moduleName(statement.moduleSpecifier);
    if (!bindings || !ts.isNamedImports(bindings) || !name.startsWith(".")) return [];
    return bindings.elements.map(
      (one) =>
        [one.name.text, definingFile(joined(folder, name), (one.propertyName ?? one.name).text)] as const,
    );
  });
  return new Map(pairs);
}

/** Follows an index to the file that defines the name. */
function definingFile(path: string, name: string): string {
  if (sourceOf(`${path}.ts`) !== null) return `${path}.ts`;
  const index = `${path}/index.ts`;
  const found = exportsOfIndex(index, sourceOf(index) ?? "").find((one) => one.endsWith(`#${name}`));
  return found?.slice(0, found.indexOf("#")) ?? index;
}

const texts = new Map<string, string | null>();
function sourceOf(path: string): string | null {
  const known = texts.get(path);
  if (known !== undefined) return known;
  let text: string | null = null;
  try {
    text = projectFile(path);
  } catch {
    // No such file: the name is that of a folder.
  }
  texts.set(path, text);
  return text;
}

function bodyOf(fn: ts.Node, file: string, where: ReadonlyMap<string, string>): Body {
  let throws = false;
  const calls = new Set<string>();
  const visit = (node: ts.Node): void => {
    if (ts.isThrowStatement(node)) throws = true;
    if (ts.isCallExpression(node) && ts.isIdentifier(node.expression)) {
      const called = node.expression.text;
      const from = where.get(called) ?? file;
      if (from === UNITS_FILE) throws = true;
      calls.add(`${from}#${called}`);
    }
    ts.forEachChild(node, visit);
  };
  visit(fn);
  return { throws, calls };
}

function docOf(node: ts.Node): Doc | null {
  const doc = ts.getJSDocCommentsAndTags(node).filter(ts.isJSDoc).at(-1);
  if (!doc) return null;
  const tags = doc.tags ?? [];
  const named = (name: string) =>
    tags.filter((tag) => tag.tagName.text === name).map((tag) => textAfter(tag.getText(), name));
  return {
    meaning: ts.getTextOfJSDocComment(doc.comment) ?? "",
    // `input.airflowCfm` describes a part of `input`.
    params: tags.flatMap((tag) =>
      ts.isJSDocParameterTag(tag)
        ? [
            {
              name: tag.name.getText().split(".")[0] ?? "",
              text: ts.getTextOfJSDocComment(tag.comment) ?? "",
            },
          ]
        : [],
    ),
    returns: named("returns")[0] ?? null,
    throws: named("throws"),
    see: named("see"),
  };
}

/** The words of a tag, without its name and the stars of its lines. */
function textAfter(tag: string, name: string): string {
  return tag
    .slice(name.length + 1)
    .replace(/\n\s*\*/g, "\n")
    .trim();
}

function nameOf(statement: ts.Statement): string {
  return ts.isFunctionDeclaration(statement) ? (statement.name?.text ?? "") : "";
}

function isFunction(node: ts.Expression): node is ts.ArrowFunction | ts.FunctionExpression {
  return ts.isArrowFunction(node) || ts.isFunctionExpression(node);
}

function moduleName(node: ts.Expression): string {
  return ts.isStringLiteral(node) ? node.text : "";
}

function joined(folder: string, name: string): string {
  const parts = folder.split("/");
  for (const part of name.split("/")) {
    if (part === "..") parts.pop();
    else if (part !== ".") parts.push(part);
  }
  return parts.join("/");
}

function parse(path: string, text: string): ts.SourceFile {
  return ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
}
