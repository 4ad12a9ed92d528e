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
    .map((file) => at(root, file))
    .filter(existsSync);
  const found = new Set<string>();
  const look = (text: string) => {
    for (const [name] of text.matchAll(CHUNK)) {
      const file = `${BUILD}/${name}`;
      if (found.has(file) || !existsSync(at(root, file))) continue;
      found.add(file);
      look(readFileSync(at(root, file), "utf8"));
    }
  };
  // Old browsers' patches are for browsers that know no service worker.
  for (const source of sources) look(readFileSync(source, "utf8").replace(/"polyfillFiles": \[[^\]]*\]/, ""));
  return [...found, ...fonts(root), "public/icons/*"];
}

/** Read while building only; said so that the build does not take the whole project for a part of this route. */
function at(root: string, file: string): string {
  return path.join(/* turbopackIgnore: true */ root, file);
}

function fonts(root: string): readonly string[] {
  const folder = at(root, `${BUILD}/static/media`);
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => FONT.test(name))
    .map((name) => `${BUILD}/static/media/${name}`);
}
