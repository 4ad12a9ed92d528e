import { randomUUID } from "node:crypto";
import { makeLinkToken } from "@/lib/auth/link-token";
import { makeSecret } from "@/lib/auth/one-time-secret";
import { hashPassword } from "@/lib/auth/password";
import { apiTokens } from "@/lib/db/api-tokens";
import { catalog, type NewEquipmentModel } from "@/lib/db/catalog";
import { company } from "@/lib/db/company";
import { companyExports } from "@/lib/db/company-exports";
import { fieldContacts } from "@/lib/db/field-contacts";
import { heldValues } from "@/lib/db/held-values";
import { instruments } from "@/lib/db/instruments";
import { members } from "@/lib/db/members";
import { packetShares } from "@/lib/db/packet-shares";
import { packets } from "@/lib/db/packets";
import { questions } from "@/lib/db/questions";
import { savedViews } from "@/lib/db/saved-views";
import { unscopedNoteTokenUsed } from "@/lib/db/unscoped/api-tokens";
import { unscopedSetPassword } from "@/lib/db/unscoped/people";
import { webhookDeliveries } from "@/lib/db/webhook-deliveries";
import { webhooks } from "@/lib/db/webhooks";
import { workItems } from "@/lib/db/work-items";
import { asId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { sha256Of, storeFile } from "@/lib/files/store";
import { rendererName } from "@/lib/reports/renderer";
import { addApiToken } from "@/lib/services/api-tokens";
import { addFile, holdFile } from "@/lib/services/attachments";
import { saveLogo } from "@/lib/services/brand";
import { logCallback } from "@/lib/services/callbacks";
import { handOver } from "@/lib/services/hand-over";
import { importLog } from "@/lib/services/import-log";
import { keepView } from "@/lib/services/kept-view";
import { queueLogImport } from "@/lib/services/log-queue";
import { monthDigest } from "@/lib/services/month-digest";
import { addOption } from "@/lib/services/options";
import { crewPacketView } from "@/lib/services/packet-views/crew";
import { askOriginal } from "@/lib/services/photo-originals";
import { saveView } from "@/lib/services/saved-views";
import { addWeatherFile } from "@/lib/services/weather";
import { addWebhook } from "@/lib/services/webhooks";
import { oneStageThermostat } from "@/seed/catalog/controls";
import { twoStageHeatPump } from "@/seed/catalog/equipment";
import { pocketHygrometer } from "@/seed/catalog/instruments";
import { TIDEWILLOW_LOGO } from "@/seed/logos";
import { A_YEAR, type Ids, REPORT } from "./door-samples";
import { packetPartsOf } from "./packet-parts";
import { addMember, type Crew, given, makeCrew } from "./people";
import { PHOTO } from "./photo";
import { LOAD, openJob, STARTUP, save, sign } from "./service-jobs";

export type WholeCompany = {
  readonly crew: Crew;
  readonly ids: Ids;
  /** A token of the owner's that may write, as it is sent. */
  readonly apiToken: string;
  /** A job nobody is assigned to, with its packet. */
  readonly unassigned: Pick<Ids, "jobId" | "packetId" | "importId">;
};

/** A company with one row behind every id that an action or a route can name. The tech is assigned to its job. */
export async function makeWholeCompany(): Promise<WholeCompany> {
  const crew = await makeCrew();
  const { owner, office, tech } = crew;
  // Members of a crew have no password; these can change theirs.
  const passwordHash = await hashPassword("long enough before");
  for (const one of [owner, office, tech]) await unscopedSetPassword(one.userId, passwordHash);
  await saveLogo(owner, new TextEncoder().encode(TIDEWILLOW_LOGO));
  const weatherFileId = await addWeatherFile(office, {
    name: "A year",
    sourceNote: "invented",
    bytes: A_YEAR,
  });
  const modelId = await catalog(office).addEquipment(twoStageHeatPump);
  const { secret, hash } = makeSecret();
  const invited = { email: `${randomUUID()}@example.com`, name: "In Vited", role: "tech" } as const;
  const expiresAt = new Date(Date.now() + 86_400_000);
  await members(owner).invite({ ...invited, tokenHash: hash, expiresAt });
  const invitation = given((await members(owner).openInvitations(new Date()))[0]);
  const memberId = (await addMember(owner.tenantId, "tech")).userId;
  const { jobId, importId } = await fullJob(crew, modelId, [tech.userId], weatherFileId);
  const packetId = await keptPacket(crew, jobId);
  const link = makeLinkToken(owner.tenantId);
  const shareId = await packetShares(office).add({
    jobId: asId<"job">(jobId),
    packetId: asId<"packet">(packetId),
    purpose: "mail",
    sentTo: "someone@example.com",
    message: "",
    sha256: "",
    tokenHash: link.tokenHash,
    expiresAt,
  });
  const other = await fullJob(crew, modelId, []);
  const rows = await catalogRows(crew);
  const apiToken = await usedToken(owner);
  return {
    crew,
    apiToken,
    ids: {
      jobId,
      callbackId: await logCallback(office, {
        jobId,
        kind: "musty",
        reportedOn: "2026-07-20",
        reportedByName: "",
        complaint: "Smells of cellar",
      }),
      packetId,
      digestId: (await monthDigest(crew.owner, "2026-07")).id,
      shareId,
      packetSecret: link.token,
      savedViewId: await saveView(owner, "across-jobs", { name: "Kept", query: "by=season", shared: false }),
      importId,
      modelId,
      ...rows,
      ...(await endedDelivery(owner)),
      apiTokenId: given((await apiTokens(owner).list())[0]).id,
      draftJobId: await draftJob(crew, modelId, rows.controlId),
      optionId: await twoOptions(office, jobId),
      weatherFileId,
      memberId,
      invitationId: invitation.id,
      workId: await failedWork(owner),
      logWorkId: await queuedLog(office, jobId),
      exportId: await keptExport(owner),
      companyName: (await company(owner).get()).name,
      viewId: await savedViews(owner).save("jobs", { name: "Mine", query: "", shared: false }),
      secret,
      ...(await fieldRows(crew, jobId)),
    },
    unassigned: { ...other, packetId: await keptPacket(crew, other.jobId) },
  };
}

/** The first of two options: fewer are not chosen from. */
async function twoOptions(office: TenantScope, jobId: string): Promise<string> {
  const optionId = await addOption(office, { jobId, label: "As selected", copyOf: null });
  await addOption(office, { jobId, label: "Beside it", copyOf: optionId });
  return optionId;
}

/** What a phone and the office have said to each other about a job. */
async function fieldRows({ owner, office, tech }: Crew, jobId: string) {
  for (const one of [owner, office, tech]) await fieldContacts(one).note([jobId]);
  const ask = { jobId, stage: null, fieldPath: null, text: "Which filter?" };
  const [photoId, reportId, latePhotoId, askedPhotoId] = Array.from({ length: 4 }, () => randomUUID()) as [
    string,
    string,
    string,
    string,
  ];
  const clientId = randomUUID();
  const photo = {
    jobId,
    kind: "photo",
    stage: "startup_record",
    fileName: "photo",
    bytes: PHOTO,
    details: { sha256: sha256Of(PHOTO), caption: "" },
  } as const;
  await addFile(tech, { ...photo, id: photoId });
  await addFile(owner, { ...photo, id: askedPhotoId });
  await askOriginal(office, { jobId, photoId: askedPhotoId });
  const report = { ...photo, kind: "report", stage: "load_summary", fileName: "load.pdf" } as const;
  const details = { sha256: sha256Of(REPORT), caption: "" };
  await addFile(office, { ...report, id: reportId, bytes: REPORT, details });
  await holdFile(tech, { ...photo, id: latePhotoId });
  const fields = { supplyVoltage: { base: null, value: 240 } };
  const sent = { clientId, deviceTime: "2026-07-01T12:00:00.000Z" };
  await handOver(tech, { ...sent, jobs: [{ jobId, fields }] });
  return {
    questionId: await questions(office).ask(ask),
    photoId,
    reportId,
    latePhotoId,
    askedPhotoId,
    lateId: given((await heldValues(office).waiting(jobId))[0]).id,
  };
}

async function fullJob(
  { office }: Crew,
  modelId: string,
  techIds: readonly string[],
  weatherFileId?: string,
) {
  const jobId = await openJob(office, { techIds, ...(weatherFileId ? { weatherFileId } : {}) });
  await save(office, jobId, "load_summary", LOAD);
  await save(office, jobId, "startup_record", STARTUP);
  await save(office, jobId, "equipment_selection", { equipmentModelId: modelId, capacitySetting: "3 tons" });
  await sign(office, jobId, "equipment_selection", 1);
  const rows = Array.from(
    { length: 24 },
    (_, hour) => `2026-07-02 ${String(hour).padStart(2, "0")}:00,75.0,52.0`,
  );
  const { importId } = await importLog(office, {
    jobId,
    fileName: "earlier.csv",
    bytes: new TextEncoder().encode(`Local time,Indoor temperature F,Indoor RH %\n${rows.join("\n")}\n`),
    sourceName: "Earlier sensor",
    mapping: null,
  });
  await save(office, jobId, "humidity_review", { logImportId: importId, conclusion: "kept" });
  return { jobId, importId };
}

/** An uploaded log that no worker has read yet. */
async function queuedLog(office: TenantScope, jobId: string): Promise<string> {
  const bytes = new TextEncoder().encode(
    "Local time,Indoor RH %\n2026-07-03 00:00,52\n2026-07-03 01:00,53\n",
  );
  const asked = { jobId, fileName: "queued.csv", bytes, sourceName: "Queued sensor", mapping: null };
  return (await queueLogImport(office, asked)).workId;
}

/** A webhook, and a delivery of it that was given up. */
async function endedDelivery(owner: TenantScope) {
  await addWebhook(owner, { url: "https://hook.example.com/in", events: ["packet.sent"] });
  const webhookId = given((await webhooks(owner).list())[0]).id;
  const { id: deliveryId } = await webhookDeliveries(owner).addTo(webhookId, "test", {});
  const said = { attempts: 8, responseStatus: 500, problem: "It answered 500." };
  await webhookDeliveries(owner).failed(deliveryId, said, true);
  return { webhookId, deliveryId };
}

/** A token noted as used later than now, so that knocking with it changes nothing. */
async function usedToken(owner: TenantScope): Promise<string> {
  const { token } = await addApiToken(owner, { name: "A program", access: "write", days: "30" });
  const tokenId = given((await apiTokens(owner).list())[0]).id;
  const later = new Date(Date.now() + 86_400_000);
  await unscopedNoteTokenUsed({ tenantId: owner.tenantId, tokenId }, later);
  return token;
}

async function failedWork(owner: TenantScope): Promise<string> {
  const id = await workItems(owner).add({ task: "judge jobs again", title: "Judge all jobs again: a test" });
  await workItems(owner).begin(id);
  await workItems(owner).fail(id, "It could not be done.", null);
  return id;
}

/** An export as one that was made earlier. */
async function keptExport(owner: TenantScope): Promise<string> {
  const id = await companyExports(owner).add();
  const file = await storeFile(owner.tenantId, new TextEncoder().encode("%PDF-1.7\n%"), "packet", "packet");
  const now = new Date();
  await companyExports(owner).finish(id, file, now, new Date(now.getTime() + 86_400_000));
  return id;
}

/** A packet as one that was made earlier: its row and its bytes. */
async function keptPacket({ office }: Crew, jobId: string): Promise<string> {
  const bytes = new TextEncoder().encode("%PDF-1.7\n");
  const { sha256, size } = await storeFile(office.tenantId, bytes, "packet", "packet");
  return packets(office).add({
    jobId: asId<"job">(jobId),
    kind: "homeowner",
    language: "en",
    paper: "letter",
    revision: 1,
    sha256,
    inputsHash: "of an earlier day",
    engineVersion: "1",
    sizeBytes: size,
    pages: 1,
    viewSha256: await keepView(office.tenantId, crewPacketView(packetPartsOf())),
    renderer: rendererName(),
  });
}

/** What only the catalog's own ways in name, each for one of them, so that none spoils another's. */
async function catalogRows({ office }: Crew) {
  const add = (model: NewEquipmentModel) => catalog(office).addEquipment(model);
  const first = given(await catalog(office).findEquipment(await add(twoStageHeatPump)));
  return {
    newModelId: await add({ ...twoStageHeatPump, familyId: first.familyId }),
    tableModelId: await add(twoStageHeatPump),
    retireModelId: await add(twoStageHeatPump),
    retireWeatherFileId: await addWeatherFile(office, {
      name: "A year nobody uses",
      sourceNote: "invented",
      bytes: new TextEncoder().encode(
        new TextDecoder().decode(A_YEAR).replace(/^LOCATION,[^,]*/, "LOCATION,Elsewhere"),
      ),
    }),
    controlId: await catalog(office).addControl(oneStageThermostat),
    instrumentId: await instruments(office).add(pocketHygrometer),
    retireInstrumentId: await instruments(office).add(pocketHygrometer),
  };
}

/** A job whose equipment selection and control setup are drafts. */
async function draftJob({ office }: Crew, equipmentModelId: string, controlModelId: string): Promise<string> {
  const jobId = await openJob(office);
  await save(office, jobId, "equipment_selection", { equipmentModelId });
  await save(office, jobId, "control_setup", { controlModelId });
  return jobId;
}
