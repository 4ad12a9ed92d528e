import { chmod, mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { type EmbeddedServer, startEmbedded } from "@/prisma/embedded";
import { migrate } from "@/prisma/migrate";

let folder: string | null = null;
let server: EmbeddedServer | null = null;

/** A PostgreSQL of this run's own, migrated and empty. The tests find it where the application would. */
export async function setup(): Promise<void> {
  folder = await mkdtemp(path.join(tmpdir(), "dewledger-test-"));
  // As root the server runs under another account, which must be able to enter.
  await chmod(folder, 0o755);
  server = await startEmbedded({ folder, unsafeButFast: true });
  await migrate(server.url);
  process.env.DATABASE_URL = server.url;
  process.env.NEXTAUTH_SECRET = "a secret of the tests, of no use anywhere else";
  process.env.DATA_DIR = path.join(folder, "files");
}

export async function teardown(): Promise<void> {
  await server?.stop();
  if (folder) await rm(folder, { recursive: true, force: true });
}
