import { randomUUID } from "node:crypto";
import { mkdir } from "node:fs/promises";
import path from "node:path";
import { encode } from "next-auth/jwt";
import { startEmbedded } from "@/prisma/embedded";
import { migrate } from "@/prisma/migrate";
import { makeServerFolder, removeServerFolder } from "./own-server";
import { processorSecondsOf } from "./processor-time";
import { startApp } from "./running-app";

const SECRET = "a secret of the tests, of no use anywhere else";

/** A tech with a job of their own and the cookie of a sign-in. */
export type PhoneOfTest = { readonly userId: string; readonly jobId: string; readonly cookie: string };

export type FieldApp = {
  readonly address: string;
  readonly tenantId: string;
  /** Processor time that the application and PostgreSQL have used so far, s; not a number where it cannot be told. */
  readonly processorSeconds: () => { readonly application: number; readonly database: number };
  readonly phones: readonly PhoneOfTest[];
  /** The stored startup inputs and version of a job, how often it was saved, and its photos. */
  readonly recordOf: (jobId: string) => Promise<{
    readonly inputs: Readonly<Record<string, unknown>>;
    readonly version: number;
    readonly saves: number;
    readonly photos: readonly string[];
  }>;
};

/** Runs work against the built application with so many techs on a database of its own; leaves nothing behind. */
export async function withFieldApp<T>(techs: number, work: (app: FieldApp) => Promise<T>): Promise<T> {
  const folder = await makeServerFolder();
  const dataDir = path.join(folder, "files");
  await mkdir(dataDir);
  const server = await startEmbedded({ folder });
  try {
    await migrate(server.url);
    Object.assign(process.env, {
      DATABASE_URL: server.url,
      DATA_DIR: dataDir,
      NEXTAUTH_SECRET: SECRET,
      LOG_LEVEL: "error",
    });
    const { closeDatabase } = await import("@/lib/db/client");
    const app = await startApp({ databaseUrl: server.url, dataDir });
    try {
      const processorSeconds = () => ({
        application: processorSecondsOf(app.pid),
        database: processorSecondsOf(server.postmasterPid),
      });
      return await work({ address: app.address, processorSeconds, ...(await fillCompany(techs)) });
    } finally {
      await app.kill("SIGTERM");
      await closeDatabase();
    }
  } finally {
    await server.stop();
    await removeServerFolder(folder);
  }
}

/** Every job has its design done, so that each upload is judged as in use. */
async function fillCompany(techs: number): Promise<Omit<FieldApp, "address" | "processorSeconds">> {
  const { catalog } = await import("@/lib/db/catalog");
  const { twoStageHeatPump } = await import("@/seed/catalog/equipment");
  const { makeCrew, addMember } = await import("./people");
  const { LOAD, openJob, save } = await import("./service-jobs");
  const { office, owner } = await makeCrew();
  const modelId = await catalog(office).addEquipment(twoStageHeatPump);
  const phones: PhoneOfTest[] = [];
  for (let count = 0; count < techs; count++) {
    const { userId } = await addMember(office.tenantId, "tech");
    const jobId = await openJob(office, { techIds: [userId] });
    await save(office, jobId, "load_summary", LOAD);
    await save(office, jobId, "equipment_selection", {
      equipmentModelId: modelId,
      capacitySetting: "3 tons",
    });
    // As the sign-in makes it; signing in is not what is measured.
    const token = await encode({ token: { userId, sessionVersion: 1 }, secret: SECRET });
    phones.push({ userId, jobId, cookie: `next-auth.session-token=${token}` });
  }
  return { tenantId: office.tenantId, phones, recordOf: (jobId) => recordOf(owner, jobId) };
}

async function recordOf(
  owner: Parameters<typeof import("@/lib/db/activity").activity>[0],
  jobId: string,
): ReturnType<FieldApp["recordOf"]> {
  const { activity } = await import("@/lib/db/activity");
  const { attachments } = await import("@/lib/db/attachments");
  const { stageRecords } = await import("@/lib/db/stage-records");
  const { asId } = await import("@/lib/domain/ids");
  const record = (await stageRecords(owner).latest(asId<"job">(jobId))).startup_record;
  const lines = await activity(owner).list({ jobId, take: 10_000 });
  return {
    inputs: record?.inputs ?? {},
    version: record?.version ?? 0,
    saves: lines.filter((line) => line.action === "Startup record saved").length,
    photos: (await attachments(owner).list([jobId])).map((one) => one.id),
  };
}

export type Change = { readonly base: unknown; readonly value: unknown };

/** One upload as a phone sends it; sent again it must be this very object. */
export function upload(fields: Readonly<Record<string, Change>>) {
  return { clientId: randomUUID(), deviceTime: new Date().toISOString(), fields };
}
