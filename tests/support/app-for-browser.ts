import { chmod, mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { startEmbedded } from "../../prisma/embedded";
import { migrate } from "../../prisma/migrate";
import { startApp } from "./running-app";

/** A database of this run's own with the demo in it, and the built application on top. */
export default async function setup(): Promise<() => Promise<void>> {
  const folder = await mkdtemp(path.join(tmpdir(), "dewledger-browser-"));
  await chmod(folder, 0o755);
  const server = await startEmbedded({ folder, unsafeButFast: true });
  await migrate(server.url);
  const dataDir = path.join(folder, "files");
  Object.assign(process.env, {
    DATABASE_URL: server.url,
    DATA_DIR: dataDir,
    NEXTAUTH_SECRET: "a secret of the tests, of no use anywhere else",
  });
  const { seedDemo } = await import("../../seed/seed");
  await seedDemo();
  const app = await startApp({ databaseUrl: server.url, dataDir });
  Object.assign(process.env, { APP_ADDRESS: app.address, APP_DATA_DIR: dataDir });
  return async () => {
    await app.kill("SIGTERM");
    await server.stop();
    await rm(folder, { recursive: true, force: true });
  };
}
