import type { Client } from "pg";
import { closeDatabase } from "@/lib/db/client";
import { startEmbedded } from "@/prisma/embedded";
import { migrate } from "@/prisma/migrate";
import { connect } from "../support/connect";
import { makeServerFolder, removeServerFolder } from "../support/own-server";

/** Runs a benchmark on an empty embedded server of its own, where the application finds it, with a connection to fill it. */
export async function onOwnServer(run: (client: Client) => Promise<void>): Promise<void> {
  process.noDeprecation = true;
  const folder = await makeServerFolder();
  const server = await startEmbedded({ folder, unsafeButFast: true });
  try {
    process.env.DATABASE_URL = server.url;
    process.env.NEXTAUTH_SECRET = "a secret of the benchmark, of no use anywhere else";
    await migrate(server.url);
    const client = await connect(server.url);
    await run(client);
    await client.end();
  } finally {
    await closeDatabase();
    await server.stop();
    await removeServerFolder(folder);
  }
}
