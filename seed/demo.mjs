// `npm run demo`: from a fresh checkout to a served demo, or in seconds the second time.
import { spawn } from "node:child_process";
import { randomBytes } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import path from "node:path";
import { bin, buildIfStale, prepare, ROOT } from "./prepare.mjs";

const DATA = path.resolve(ROOT, process.env.DATA_DIR ?? ".data");

prepare();
mkdirSync(DATA, { recursive: true });
const port = await freePort(Number(process.env.PORT ?? 3000));
const address = `http://localhost:${port}`;
const settings = {
  DATA_DIR: DATA,
  NEXTAUTH_SECRET: keptSecret(),
  NEXTAUTH_URL: address,
  NODE_ENV: "production",
  TZ: "UTC",
};
buildIfStale();

const server = spawn(bin("tsx"), ["seed/serve.ts"], {
  cwd: ROOT,
  stdio: "inherit",
  env: { ...process.env, ...settings, PORT: String(port) },
});
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => server.kill(signal));
server.on("exit", (code) => process.exit(code ?? 0));

/** Signs sessions; made once and kept, so that sign-ins survive a restart. */
function keptSecret() {
  const file = path.join(DATA, "secret");
  if (!existsSync(file)) writeFileSync(file, randomBytes(32).toString("hex"), { mode: 0o600 });
  return readFileSync(file, "utf8");
}

/** The wanted port, or the next free one. */
async function freePort(wanted) {
  for (let port = wanted; port < wanted + 50; port++) if (await isFree(port)) return port;
  throw new Error(`No free port from ${wanted} to ${wanted + 49}. Set PORT.`);
}

function isFree(port) {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once("error", () => resolve(false));
    probe.listen(port, () => probe.close(() => resolve(true)));
  });
}
