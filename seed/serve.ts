/**
 * Serves the demo: PostgreSQL (the embedded one unless DATABASE_URL names another), migrations, the demo's
 * companies when they are missing, and the built application. Started by `npm run demo`.
 *
 * A signal stops the application first and PostgreSQL after it, so that no save is cut off.
 */
import path from "node:path";
import { type EmbeddedServer, startEmbedded } from "@/prisma/embedded";
import { migrate } from "@/prisma/migrate";
import { type ChildApplication, startApplication, waitUntilHealthy } from "./child-application";
import type { DemoSignIn } from "./seed";

// Prisma's adapter queues queries on one connection, which pg 8 allows and only warns of.
process.noDeprecation = true;

const port = process.env.PORT ?? "3000";
let postgres: Promise<EmbeddedServer> | null = null;
let application: ChildApplication | null = null;
let stopping: Promise<never> | null = null;

for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) process.on(signal, () => void stop(0));

try {
  process.env.DATABASE_URL ??= await embeddedUrl();
  await migrate(process.env.DATABASE_URL);
  const signIns = await seeded();
  application = startApplication(port);
  void application.ended.then((code) => stop(code));
  await waitUntilHealthy(port, application);
  process.stdout.write(welcome(signIns));
} catch (error) {
  // A signal cuts off whatever was going on; that is no failure.
  if (stopping === null) process.stderr.write(`${error instanceof Error ? error.message : error}\n`);
  await stop(1);
}

async function embeddedUrl(): Promise<string> {
  postgres = startEmbedded({ folder: path.resolve(process.env.DATA_DIR ?? ".data", "postgres") });
  return (await postgres).url;
}

/** Imported late: the settings are read at first use, and the database's address is known only now. */
async function seeded(): Promise<readonly DemoSignIn[]> {
  const { seedDemo } = await import("./seed");
  const { closeDatabase } = await import("@/lib/db/client");
  try {
    return await seedDemo();
  } finally {
    await closeDatabase();
  }
}

/** Only the first call counts; a second signal waits for the same end. */
function stop(code: number): Promise<never> {
  stopping ??= (async () => {
    await application?.stop();
    const server = await postgres?.catch(() => null);
    await server?.stop();
    process.exit(code);
  })();
  return stopping;
}

function welcome(signIns: readonly DemoSignIn[]): string {
  const people = signIns.map(
    ({ email, role, name, companies }) =>
      `  ${email.padEnd(26)} ${role.padEnd(7)} ${name}, ${companies.join(" and ")}`,
  );
  return [
    "",
    `Dewledger's demo is ready at ${process.env.NEXTAUTH_URL ?? `http://localhost:${port}`}`,
    "Everything in it is invented, except weather years and one measured log, which name their origin.",
    "",
    `Sign in as one of these; the password of all is: ${signIns[0]?.password ?? ""}`,
    ...people,
    "",
    "Ctrl-C stops it; what was entered stays.",
    "",
  ].join("\n");
}
