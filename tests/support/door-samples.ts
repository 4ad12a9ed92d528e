import { randomUUID } from "node:crypto";
import { readFileSync } from "node:fs";
import { makeLinkToken } from "@/lib/auth/link-token";
import { sha256Of } from "@/lib/files/store";
import { HICKORANE_LOGO } from "@/seed/logos";
import { PHOTO } from "./photo";
import { LOAD, STARTUP } from "./service-jobs";

/** As little as a file of that kind begins with. */
export const REPORT = new TextEncoder().encode("%PDF-1.7\n");

/** The ids an input may name. */
export type Ids = Readonly<
  Record<
    | "jobId"
    | "callbackId"
    | "savedViewId"
    | "packetId"
    | "digestId"
    | "importId"
    | "modelId"
    | "newModelId"
    | "tableModelId"
    | "retireModelId"
    | "retireWeatherFileId"
    | "controlId"
    | "instrumentId"
    | "retireInstrumentId"
    | "draftJobId"
    | "optionId"
    | "weatherFileId"
    | "memberId"
    | "invitationId"
    | "workId"
    | "logWorkId"
    | "exportId"
    | "companyName"
    | "viewId"
    | "secret"
    | "questionId"
    | "photoId"
    | "reportId"
    | "lateId"
    | "latePhotoId"
    | "askedPhotoId"
    | "shareId"
    | "apiTokenId"
    | "webhookId"
    | "deliveryId"
    | "packetSecret",
    string
  >
>;

/** What an action is called with, or what a route is. */
export type ActionSample = (ids: Ids) => unknown;
export type RouteSample = (ids: Ids) => {
  readonly params: Readonly<Record<string, string>>;
  readonly query?: Readonly<Record<string, string>>;
  readonly body?: BodyInit;
  readonly headers?: Readonly<Record<string, string>>;
};

/** Ids that name nothing. */
export function randomIds(): Ids {
  return {
    jobId: randomUUID(),
    callbackId: randomUUID(),
    savedViewId: randomUUID(),
    packetId: randomUUID(),
    digestId: randomUUID(),
    importId: randomUUID(),
    modelId: randomUUID(),
    newModelId: randomUUID(),
    tableModelId: randomUUID(),
    retireModelId: randomUUID(),
    retireWeatherFileId: randomUUID(),
    retireInstrumentId: randomUUID(),
    draftJobId: randomUUID(),
    controlId: randomUUID(),
    instrumentId: randomUUID(),
    optionId: randomUUID(),
    weatherFileId: randomUUID(),
    memberId: randomUUID(),
    invitationId: randomUUID(),
    workId: randomUUID(),
    logWorkId: randomUUID(),
    exportId: randomUUID(),
    companyName: randomUUID(),
    viewId: randomUUID(),
    secret: randomUUID().repeat(2),
    questionId: randomUUID(),
    photoId: randomUUID(),
    reportId: randomUUID(),
    lateId: randomUUID(),
    latePhotoId: randomUUID(),
    askedPhotoId: randomUUID(),
    shareId: randomUUID(),
    apiTokenId: randomUUID(),
    webhookId: randomUUID(),
    deliveryId: randomUUID(),
    packetSecret: makeLinkToken(randomUUID()).token,
  };
}

/** When a phone says it sent something. */
const SENT = { deviceTime: "2026-07-01T12:00:00.000Z" };

const BRAND = {
  displayName: "Reed Air",
  licenseLine: "",
  phone: "",
  email: "",
  website: "",
  addressLines: "",
  accentColor: "#123456",
  coverWords: "",
  closingWords: "",
  paper: "letter",
  coverStyle: "ledger",
  partsWarrantyYears: "",
  laborWarrantyYears: "",
  maintenanceMonths: "",
};

const LOG_CSV = `Local time,Indoor temperature F,Indoor RH %\n${Array.from(
  { length: 24 },
  (_, hour) => `2026-07-01 ${String(hour).padStart(2, "0")}:00,75.0,5${hour % 10}.0`,
).join("\n")}\n`;

function logUpload(): FormData {
  const form = new FormData();
  form.set("file", new File([LOG_CSV], "log.csv", { type: "text/csv" }));
  form.set("sourceName", "Hall sensor");
  return form;
}

/** Another year each time: the very same file is refused the second time. */
function weatherUpload(): FormData {
  const year = readFileSync(new URL("../../seed/weather/houston-2a.epw", import.meta.url), "utf8");
  const form = new FormData();
  form.set("file", new File([year.replace(/^LOCATION,[^,]*/, `LOCATION,${randomUUID()}`)], "year.epw"));
  form.set("name", "Another year");
  form.set("sourceNote", "see seed/weather");
  return form;
}

function reportUpload(): FormData {
  const form = new FormData();
  form.set("file", new File([REPORT], "load.pdf", { type: "application/pdf" }));
  return form;
}

/** A model's form as a person would send it. */
export const EQUIPMENT_FORM = {
  modelId: null,
  maker: "Invented Works",
  name: "Invented 36",
  modelNumber: "",
  compressorKind: "two_stage",
  nominalTons: "3 tons",
  refrigerant: "R-410A",
  sourceNote: "Invented for the test",
  ratedAirflowCfm: "1,200 cfm",
  capacitySettings: [{ name: "3 tons", tons: "3", firstStageTable: "" }],
  maxExternalStaticInWc: "0.8",
  minimumAirflowCfm: "",
  electricHeatMinimumAirflowCfm: "",
  includedLengthFt: "15",
  addOzPerFt: "0.6",
  factoryChargeLb: "7",
  subcoolingF: "10",
  superheatF: "",
  boardLabels: {},
  heldCoil: null,
};

/**
 * An input for each action that the right person with the right ids gets through with: a job whose load
 * summary and startup record are complete drafts and whose equipment selection is signed.
 */
export const ACTION_SAMPLES: Readonly<Record<string, ActionSample>> = {
  "create job": ({ memberId, weatherFileId }) => ({
    customerName: "Bo Reed",
    addressLine: "1 Oak Way",
    city: "Bay",
    region: "TX",
    postalCode: "77000",
    elevationFt: 10,
    techIds: [memberId],
    weatherFileId,
  }),
  "correct job": ({ jobId }) => ({
    jobId,
    expectedVersion: 1,
    customerName: "Bo Reed",
    addressLine: "1 Oak Way",
    city: "Bay",
    region: "TX",
    postalCode: "77000",
    elevationFt: 10,
  }),
  "schedule job": ({ jobId, memberId }) => ({
    jobId,
    expectedVersion: 1,
    startupDue: "2026-07-01",
    reviewDue: null,
    techIds: [memberId],
  }),
  "save design record": ({ jobId }) => ({
    jobId,
    stage: "load_summary",
    expectedVersion: 1,
    inputs: { ...LOAD, bedrooms: 4 },
  }),
  "save startup record": ({ jobId }) => ({
    jobId,
    stage: "startup_record",
    expectedVersion: 1,
    inputs: { ...STARTUP, outdoorDbF: 91 },
  }),
  "choose weather": ({ jobId, weatherFileId }) => ({
    jobId,
    weatherFileId,
    latitude: "29.76",
    longitude: "-95.37",
  }),
  "retire weather file": ({ retireWeatherFileId }) => ({ weatherFileId: retireWeatherFileId }),
  "hold forecast against log": ({ jobId, importId }) => ({ jobId, importId }),
  "save humidity review": ({ jobId }) => ({
    jobId,
    stage: "humidity_review",
    expectedVersion: 1,
    inputs: { conclusion: "open" },
  }),
  "sign design record": ({ jobId }) => signed(jobId, "load_summary"),
  "sign startup record": ({ jobId }) => signed(jobId, "startup_record"),
  "sign humidity review": ({ jobId }) => signed(jobId, "humidity_review"),
  "reopen record": ({ jobId }) => ({ jobId, stage: "equipment_selection", reason: "Another model" }),
  "add option": ({ jobId, optionId }) => ({ jobId, label: "Smaller", copyOf: optionId }),
  "save option": ({ jobId, optionId }) => ({
    jobId,
    optionId,
    expectedVersion: 1,
    label: "Less air",
    inputs: { secondStageAirflowSetting: "B" },
  }),
  "move option": ({ jobId, optionId }) => ({ jobId, optionId, by: 1 }),
  "remove option": ({ jobId, optionId }) => ({ jobId, optionId }),
  "keep forecast": ({ jobId }) => ({ jobId, changed: { house: {}, system: {} } }),
  "choose option": ({ jobId, optionId }) => ({
    jobId,
    optionId,
    expectedVersion: 1,
    reason: "Dries best",
    reopenSigned: true,
  }),
  "read equipment model": ({ modelId }) => ({ modelId }),
  "save equipment": ({ modelId }) => ({ ...EQUIPMENT_FORM, modelId }),
  "duplicate equipment": ({ modelId }) => ({ modelId }),
  "import table": ({ tableModelId }) => ({
    modelId: tableModelId,
    kind: "fan",
    how: "replace",
    headings: ["Tap", "Static", "CFM"],
    rows: [
      { line: 2, cells: ["1", "0.1", "1000"] },
      { line: 3, cells: ["1", "0.5", "900"] },
    ],
    mapping: {
      airflowSetting: { column: 0, constant: "", unit: null },
      externalStaticInWc: { column: 1, constant: "", unit: "in. w.c." },
      airflowCfm: { column: 2, constant: "", unit: "cfm" },
    },
  }),
  "take version back": ({ newModelId }) => ({ modelId: newModelId }),
  "retire equipment": ({ retireModelId }) => ({ modelId: retireModelId }),
  "bring equipment back": ({ modelId }) => ({ modelId }),
  "move job to version": ({ draftJobId, modelId }) => ({
    jobId: draftJobId,
    expectedVersion: 1,
    versionId: modelId,
  }),
  "save thermostat": ({ controlId }) => ({
    controlId,
    maker: "Maker",
    name: "T",
    stages: "2",
    makerLabels: {},
  }),
  "bring thermostat back": ({ controlId }) => ({ controlId }),
  "move job to thermostat version": ({ draftJobId, controlId }) => ({
    jobId: draftJobId,
    expectedVersion: 1,
    versionId: controlId,
  }),
  "retire thermostat": ({ controlId }) => ({ controlId }),
  "save instrument": ({ instrumentId }) => ({
    instrumentId,
    expectedVersion: 1,
    name: "Hygrometer",
    kind: "hygrometer",
    serialNumber: "",
    accuracy: [
      { quantity: "dry bulb", unit: "°F", plusMinus: "0.5", percentOfReading: "0", statedAs: "limits" },
    ],
    calibratedOn: "2026-07-01",
    calibrationDueOn: "",
  }),
  "retire instrument": ({ retireInstrumentId }) => ({
    instrumentId: retireInstrumentId,
    retired: true,
  }),
  "log callback": ({ jobId }) => ({
    jobId,
    kind: "too_humid",
    reportedOn: "2026-08-03",
    reportedByName: "",
    complaint: "Sticky every evening",
  }),
  "work on callback": ({ callbackId }) => ({
    callbackId,
    expectedVersion: 1,
    cause: "Fan on between calls",
    fix: "Fan set to off",
    fixedOn: "2026-08-05",
    outcome: "",
    outcomeNote: "",
    outcomeCheckedOn: "",
  }),
  "make packet": ({ jobId }) => ({ jobId, kind: "crew", language: "en", paper: "letter" }),
  "send packet": ({ jobId, packetId }) => ({
    jobId,
    packetId,
    to: "owner@example.com",
    message: "",
    days: "30",
    attach: false,
  }),
  "check packet": ({ jobId, packetId }) => ({ jobId, packetId }),
  "withdraw packet link": ({ jobId, shareId }) => ({ jobId, shareId }),
  "make month": () => ({ month: "2026-07" }),
  "save brand": () => BRAND,
  "remove logo": () => ({}),
  "ask question": ({ jobId }) => ({ jobId, fieldPath: "outdoorDbF", text: "In the shade?" }),
  "close question": ({ jobId, questionId }) => ({ jobId, questionId }),
  "ask for original photo": ({ jobId, photoId }) => ({ jobId, photoId }),
  "withdraw wish for original photo": ({ jobId, askedPhotoId }) => ({ jobId, photoId: askedPhotoId }),
  "decide late reading": ({ jobId, lateId }) => ({ jobId, id: lateId, take: true }),
  "decide late photo": ({ jobId, latePhotoId }) => ({ jobId, id: latePhotoId, take: true }),
  "change limit": () => ({ key: "airflow.goodPct", value: "12", reason: "Our hoods are good" }),
  "invite member": () => ({ email: `new-${randomUUID()}@example.com`, name: "New Person", role: "tech" }),
  "change role": ({ memberId }) => ({ userId: memberId, role: "office" }),
  "remove member": ({ memberId }) => ({ userId: memberId }),
  "make API token": () => ({ name: "Bookkeeping", access: "write", days: "30" }),
  "revoke API token": ({ apiTokenId }) => ({ tokenId: apiTokenId }),
  "add webhook": () => ({ url: "https://hook.example.com/in", events: ["callback.opened"] }),
  "switch webhook": ({ webhookId }) => ({ webhookId, on: false }),
  "remove webhook": ({ webhookId }) => ({ webhookId }),
  "test webhook": ({ webhookId }) => ({ webhookId }),
  "send delivery again": ({ deliveryId }) => ({ deliveryId }),
  "withdraw invitation": ({ invitationId }) => ({ invitationId }),
  "keep jobs view": () => ({ name: "Open callbacks", query: "complaint=1", shared: true }),
  "remove jobs view": ({ viewId }) => ({ viewId }),
  "preview limit": () => ({ key: "load.indoorCoolingDb", value: "78" }),
  "try work again": ({ workId }) => ({ workId }),
  "export everything": () => ({}),
  "delete company": ({ companyName }) => ({ companyName, password: "long enough before" }),
  "keep question": () => ({ name: "By airflow", query: "by=secondStageAirflowSetting" }),
  "remove question": ({ savedViewId }) => ({ viewId: savedViewId }),
  "switch own mail": () => ({ on: ["complaints"] }),
  "change password": () => ({ current: "long enough before", next: "long enough after" }),
  join: ({ secret }) => ({ secret, password: "long enough to join" }),
};

/** The hours of a real year: the job's weather. */
export const A_YEAR = readFileSync(new URL("../../seed/weather/houston-2a.epw", import.meta.url));

export const ROUTE_SAMPLES: Readonly<Record<string, RouteSample>> = {
  "read weather year": ({ jobId }) => ({ params: { jobId }, query: { sha256: sha256Of(A_YEAR) } }),
  "run forecast": ({ jobId }) => ({ params: { jobId } }),
  "export jobs": () => ({ params: {} }),
  "export across jobs": () => ({ params: {} }),
  "read logo": () => ({ params: {} }),
  "download export": ({ exportId }) => ({ params: { exportId } }),
  "save logo": () => ({ params: {}, body: HICKORANE_LOGO }),
  "add weather file": () => ({ params: {}, body: weatherUpload() }),
  "import log": ({ jobId }) => ({ params: { jobId }, body: logUpload() }),
  "follow log import": ({ jobId, logWorkId }) => ({ params: { jobId, workId: logWorkId } }),
  "cancel log import": ({ jobId, logWorkId }) => ({ params: { jobId, workId: logWorkId } }),
  "read field bundle": () => ({ params: {} }),
  "sync startup record": ({ jobId }) => ({
    params: { jobId },
    body: JSON.stringify({
      clientId: randomUUID(),
      deviceTime: "2026-07-01T12:00:00.000Z",
      fields: { outdoorDbF: { base: STARTUP.outdoorDbF, value: 91 } },
    }),
  }),
  "sign startup from phone": ({ jobId }) => ({
    params: { jobId },
    body: JSON.stringify({ ...SENT, clientId: randomUUID(), signatureName: "A. Signer" }),
  }),
  "watch startups": () => ({ params: {} }),
  "watch startup": ({ jobId }) => ({ params: { jobId } }),
  "list photos": ({ jobId }) => ({ params: { jobId } }),
  "add photo": ({ jobId }) => ({
    params: { jobId, photoId: randomUUID() },
    query: { sha256: sha256Of(PHOTO) },
    body: PHOTO,
  }),
  "read photo": ({ jobId, photoId }) => ({ params: { jobId, photoId }, query: { size: "small" } }),
  "remove photo": ({ jobId, photoId }) => ({ params: { jobId, photoId } }),
  "add original photo": ({ jobId, askedPhotoId }) => ({
    params: { jobId, photoId: askedPhotoId },
    query: { sha256: sha256Of(PHOTO) },
    body: PHOTO,
  }),
  "say no original photo": ({ jobId, askedPhotoId }) => ({
    params: { jobId, photoId: askedPhotoId },
    query: { why: "gone" },
  }),
  "add report": ({ jobId }) => ({ params: { jobId }, body: reportUpload() }),
  "read report": ({ jobId, reportId }) => ({ params: { jobId, reportId } }),
  "remove report": ({ jobId, reportId }) => ({ params: { jobId, reportId } }),
  "answer question": ({ jobId, questionId }) => ({
    params: { jobId, questionId },
    body: JSON.stringify({ ...SENT, clientId: randomUUID(), answer: "Yes" }),
  }),
  "hand over readings": ({ jobId }) => ({
    params: {},
    body: JSON.stringify({
      ...SENT,
      clientId: randomUUID(),
      jobs: [{ jobId, fields: { outdoorDbF: { base: null, value: 88 } } }],
    }),
  }),
  "hand over photo": ({ jobId }) => ({
    params: { jobId, photoId: randomUUID() },
    query: { sha256: sha256Of(PHOTO) },
    body: PHOTO,
  }),
  "read month": ({ digestId }) => ({ params: { digestId } }),
  "read shared packet": ({ packetSecret }) => ({ params: { secret: packetSecret } }),
  "preview brand": () => ({ params: {}, body: JSON.stringify(BRAND) }),
  "export log remarks": ({ jobId, importId }) => ({ params: { jobId, importId } }),
  "read log days": ({ jobId, importId }) => ({
    params: { jobId, importId },
    query: {
      channel: "indoorRhPct",
      fromMs: String(Date.UTC(2026, 6, 2)),
      toMs: String(Date.UTC(2026, 6, 4)),
    },
  }),
  "read log window": ({ jobId, importId }) => ({
    params: { jobId, importId },
    query: { fromMs: String(Date.UTC(2026, 6, 2)), toMs: String(Date.UTC(2026, 6, 4)) },
  }),
  "read packet": ({ jobId, packetId }) => ({ params: { jobId, packetId } }),
  "api list jobs": () => ({ params: {}, query: { limit: "2", stage: "load_summary" } }),
  "api read ledger": ({ jobId }) => ({ params: { jobId } }),
  "api read findings": ({ jobId }) => ({ params: { jobId } }),
  "api list packets": ({ jobId }) => ({ params: { jobId } }),
  "api list callbacks": () => ({ params: {} }),
  "api add callback": ({ jobId }) => ({
    params: {},
    headers: { "idempotency-key": randomUUID() },
    body: JSON.stringify({ jobId, kind: "musty", reportedOn: "2026-07-21", complaint: "Smells again" }),
  }),
  "api send log": ({ jobId }) => ({
    params: { jobId },
    query: { sourceName: "Hall sensor" },
    headers: { "idempotency-key": randomUUID() },
    body: LOG_CSV,
  }),
  "api follow log": ({ jobId, logWorkId }) => ({ params: { jobId, workId: logWorkId } }),
};

function signed(jobId: string, stage: string) {
  return { jobId, stage, expectedVersion: 1, signatureName: "A. Signer" };
}
