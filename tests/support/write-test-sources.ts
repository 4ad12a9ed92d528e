// `npm run generate`: keeps the sources the tests name where the Rules page reads them.
import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { collectTestSources } from "./test-sources";

const folder = path.resolve(import.meta.dirname, "../../lib/domain/generated");
mkdirSync(folder, { recursive: true });
writeFileSync(path.join(folder, "test-sources.json"), `${JSON.stringify(collectTestSources(), null, 2)}\n`);
