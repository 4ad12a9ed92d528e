import { describe, expect, test } from "vitest";
import { type SourceFile, sourceFiles } from "./source-files";

/** Who may import whom inside `lib`, `components` and `app`. A layer may always import itself. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  app: [
    "components",
    "server",
    "services",
    "reports",
    "schemas",
    "domain",
    "engineering",
    "auth",
    "env",
    "errors",
  ],
  components: ["domain", "engineering", "schemas", "charts", "offline", "errors"],
  server: ["auth", "domain", "engineering", "errors", "env"],
  // A packet is one use case: view, bytes, hash and trail must not be parted, so services render it.
  services: [
    "db",
    "domain",
    "engineering",
    "schemas",
    "reports",
    "charts",
    "errors",
    "mail",
    "files",
    "webhooks",
    "auth",
    "env",
  ],
  // Background work: what a person's request begins and no request waits for.
  work: ["services", "server", "auth", "db", "domain", "errors", "env"],
  db: ["domain", "engineering", "errors", "env"],
  auth: ["db", "domain", "errors", "env", "mail"],
  reports: ["domain", "engineering", "charts"],
  charts: ["domain", "engineering"],
  offline: ["domain", "engineering", "schemas", "errors"],
  schemas: ["domain", "engineering", "errors"],
  mail: ["env", "errors"],
  files: ["env", "errors"],
  // The one way out to addresses that a company gives: it knows nothing of companies.
  webhooks: [],
  domain: ["engineering"],
  engineering: [],
  errors: ["domain"],
  env: [],
};

/** Packages that only one layer may touch. */
const ONLY_IN: Readonly<Record<string, RegExp>> = {
  "@prisma/client": /^lib\/db\//,
  "@prisma/adapter-pg": /^lib\/db\//,
  pg: /^(lib\/db|prisma)\//,
  psychrolib: /^lib\/engineering\/air\//,
  "next-auth": /^lib\/auth\/|^app\/(api\/auth|\(auth\))\//,
  "@react-pdf/renderer": /^lib\/reports\//,
  nodemailer: /^lib\/mail\//,
  "ipaddr.js": /^lib\/webhooks\//,
  "graphile-worker": /^lib\/work\//,
};

const ENGINEERING_PACKAGES = ["psychrolib", "simple-statistics", "ml-levenberg-marquardt"];
/** Whole functions in plain JavaScript, one a package. */
const EXACT_FUNCTIONS = /^@stdlib\/math-base-special-/;

const files = sourceFiles("app", "lib", "components");
const layerOf = (path: string) =>
  path.startsWith("lib/") ? (path.split("/")[1] ?? "").replace(/\.tsx?$/, "") : (path.split("/")[0] ?? "");

describe("who may import whom", () => {
  test("every source file belongs to a known layer", () => {
    const unknown = files.map((file) => file.path).filter((path) => !(layerOf(path) in MAY_IMPORT));
    expect(unknown).toEqual([]);
  });

  test("no layer imports one it may not", () => {
    const wrong = files.flatMap((file) => foreignImports(file).map((name) => `${file.path} imports ${name}`));
    expect(wrong).toEqual([]);
  });

  test("packages stay in the one layer that wraps them", () => {
    const wrong = files.flatMap((file) =>
      Object.entries(ONLY_IN)
        .filter(([name, where]) => imports(file, name) && !where.test(file.path))
        .map(([name]) => `${file.path} imports ${name}`),
    );
    expect(wrong).toEqual([]);
  });

  test("engineering is pure: only psychrolib and listed numeric libraries, no clock, no chance, no environment", () => {
    const wrong = files
      .filter((file) => file.path.startsWith("lib/engineering/"))
      .flatMap((file) => [
        ...file.imports
          .filter((name) => name.startsWith("package:"))
          .map((name) => [name, name.slice("package:".length)] as const)
          .filter(([, name]) => !ENGINEERING_PACKAGES.includes(name) && !EXACT_FUNCTIONS.test(name))
          .map(([name]) => `${file.path} imports ${name}`),
        ...[/\bMath\.random\b/, /\bDate\.now\b/, /\bnew Date\(\)/, /\bprocess\./, /\bfetch\(/]
          .filter((pattern) => pattern.test(file.text))
          .map((pattern) => `${file.path} uses ${pattern.source}`),
      ]);
    expect(wrong).toEqual([]);
  });

  test("what a forecast is made of uses exactly defined operations only, so that browser and server give the same bytes", () => {
    const path =
      /^lib\/(engineering\/(air|airflow|equipment|load|simulation|weather)|domain\/(forecast|evaluate))\//;
    // Words and uncertainties, which no forecast reads.
    const apart = /airflow\/(sentences|airflow-checks)\.ts$/;
    const own = /\bMath\.(a?cosh?|a?sinh?|a?tanh?|atan2|cbrt|expm?1?|hypot|log(1p|2|10)?|pow)\b|\*\*(?!\/)/;
    const inexact = files
      .filter((file) => path.test(file.path) && !apart.test(file.path))
      .flatMap((file) =>
        file.text
          .split("\n")
          .filter((line) => !/^\s*(\/?\*|\/\/)/.test(line) && own.test(line))
          .map((line) => `${file.path}: ${line.trim()}`),
      );
    expect(inexact).toEqual([]);
  });

  test("process.env is read in lib/env.ts only", () => {
    const readers = files.filter((file) => /process\.env/.test(file.text)).map((file) => file.path);
    expect(readers.filter((path) => path !== "lib/env.ts")).toEqual([]);
  });

  test("only lib/auth makes a TenantScope", () => {
    const makers = files
      .filter((file) => /as (unknown as )?TenantScope\b/.test(file.text))
      .map((file) => file.path);
    expect(makers.filter((path) => !path.startsWith("lib/auth/"))).toEqual([]);
  });

  test("cross-tenant reads live in lib/db/unscoped and only auth and public links use them", () => {
    const users = files
      .filter((file) => !file.path.startsWith("lib/db/"))
      .filter((file) => file.imports.some((name) => name.startsWith("lib/db/unscoped")))
      .map((file) => file.path);
    expect(users.filter((path) => !/^lib\/(auth|services|work)\//.test(path))).toEqual([]);
  });

  test("no import cycles", () => {
    expect(cycles(files)).toEqual([]);
  });
});

function imports(file: SourceFile, name: string): boolean {
  return file.imports.some((found) => found === `package:${name}` || found.startsWith(`package:${name}/`));
}

function foreignImports(file: SourceFile): string[] {
  const own = layerOf(file.path);
  const allowed = MAY_IMPORT[own] ?? [];
  return file.imports
    .filter((name) => !name.startsWith("package:") && !name.endsWith(".css") && !name.includes("/generated/"))
    .filter((name) => layerOf(name) !== own && !allowed.includes(layerOf(name)));
}

function cycles(all: readonly SourceFile[]): string[] {
  const byPath = new Map(all.map((file) => [file.path, file]));
  const find = (name: string) =>
    [`${name}.ts`, `${name}.tsx`, `${name}/index.ts`].find((path) => byPath.has(path));
  const state = new Map<string, "open" | "done">();
  const found: string[] = [];
  const visit = (path: string, trail: readonly string[]) => {
    if (state.get(path) === "done") return;
    if (state.get(path) === "open") {
      found.push([...trail.slice(trail.indexOf(path)), path].join(" → "));
      return;
    }
    state.set(path, "open");
    for (const name of byPath.get(path)?.imports ?? []) {
      const next = find(name);
      if (next) visit(next, [...trail, path]);
    }
    state.set(path, "done");
  };
  for (const path of byPath.keys()) visit(path, []);
  return found;
}
