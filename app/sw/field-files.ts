import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";

const BUILD = ".next";
const PAGE = `${BUILD}/server/app/(field)/today/page`;
const CHUNK = /static\/chunks\/[\w~.-]+\.(?:js|css)/g;
const FONT = /^noto-sans-latin-\d.*\.woff2$/;

/**
 * The built files that the field screens can ever ask for: those their page names, and those named in these in
 * turn, for what is loaded later. Paths from the project's root; empty before there is a build.
 */
export function fieldFiles(root = process.cwd()): readonly string[] {
  const sources = [`${PAGE}_client-reference-manifest.js`, `${PAGE}/build-manifest.json`]
    .map((file) => path.join(root, file))
    .filter(existsSync);
  const found = new Set<string>();
  const look = (text: string) => {
    for (const [name] of text.matchAll(CHUNK)) {
      const file = `${BUILD}/${name}`;
      if (found.has(file) || !existsSync(path.join(root, file))) continue;
      found.add(file);
      look(readFileSync(path.join(root, file), "utf8"));
    }
  };
  for (const source of sources) look(readFileSync(source, "utf8"));
  return [...found, ...fonts(root), "public/icons/*"];
}

function fonts(root: string): readonly string[] {
  const folder = path.join(root, BUILD, "static/media");
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => FONT.test(name))
    .map((name) => `${BUILD}/static/media/${name}`);
}
