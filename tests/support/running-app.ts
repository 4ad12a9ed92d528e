import { type ChildProcess, spawn } from "node:child_process";
import { createServer } from "node:net";
import path from "node:path";
import { until } from "./own-server";

const ROOT = path.resolve(import.meta.dirname, "../..");

export type RunningApp = {
  readonly address: string;
  readonly pid: number;
  /** What the server has written so far. */
  readonly output: () => string;
  readonly isRunning: () => boolean;
  readonly kill: (signal: NodeJS.Signals) => Promise<void>;
};

/** Starts the built application on a free port and waits until it is healthy. */
export async function startApp(settings: {
  readonly databaseUrl: string;
  readonly dataDir: string;
  readonly port?: number;
}): Promise<RunningApp> {
  const port = settings.port ?? (await freePort());
  const address = `http://127.0.0.1:${port}`;
  const next = path.join(ROOT, "node_modules/next/dist/bin/next");
  const child = spawn(process.execPath, [next, "start", "-p", String(port), "-H", "127.0.0.1"], {
    cwd: ROOT,
    stdio: ["ignore", "pipe", "pipe"],
    env: {
      ...process.env,
      NODE_ENV: "production",
      DATABASE_URL: settings.databaseUrl,
      DATA_DIR: settings.dataDir,
      NEXTAUTH_URL: address,
      NEXTAUTH_SECRET: "a secret of the tests, of no use anywhere else",
    },
  });
  let output = "";
  const keep = (chunk: Buffer) => {
    output += chunk;
  };
  child.stdout.on("data", keep);
  child.stderr.on("data", keep);
  await until(() => healthy(child, address, () => output), "the application is healthy", 60_000);
  return {
    address,
    pid: child.pid ?? -1,
    output: () => output,
    isRunning: () => child.exitCode === null && child.signalCode === null,
    kill: (signal) =>
      new Promise((resolve) => {
        if (child.exitCode !== null || child.signalCode !== null) return resolve();
        child.once("exit", () => resolve());
        child.kill(signal);
      }),
  };
}

async function healthy(child: ChildProcess, address: string, output: () => string): Promise<boolean> {
  if (child.exitCode !== null) throw new Error(`The application ended while starting:\n${output()}`);
  try {
    return (await fetch(`${address}/api/health`)).ok;
  } catch {
    return false;
  }
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() =>
        address && typeof address === "object" ? resolve(address.port) : reject(new Error("no port")),
      );
    });
  });
}
