import sharp from "sharp";
import { evaluateJob, type JobContext } from "@/lib/domain/evaluate";
import { asId } from "@/lib/domain/ids";
import type { Job, JobRecords, StageRecord } from "@/lib/domain/jobs";
import { STAGES, type StageInputs, type StageKey } from "@/lib/domain/stages";
import type { PacketBrand } from "@/lib/reports/homeowner/view";
import type { PrintedPhoto } from "@/lib/reports/sheet/view";
import type { PacketParts } from "@/lib/services/packet-views/parts";
import { twoStageThermostat } from "@/seed/catalog/controls";
import { FULL_JOB } from "./full-job";

const JOB_ID = asId<"job">("55555555-5555-4555-8555-555555555555");

const JOB: Job = {
  id: JOB_ID,
  number: 1042,
  title: "Replace heat pump",
  state: "open",
  currentStage: null,
  verdict: "meets",
  attention: [],
  startupDue: "2026-07-21",
  reviewDue: "2026-08-28",
  customerName: "Łukasz O'Neil-Nguyễn",
  place: "Bay, TX",
  techs: [{ userId: asId<"user">("66666666-6666-4666-8666-666666666666"), name: "Inés Barragán-Todd" }],
  version: 1,
  customer: {
    id: asId<"customer">("77777777-7777-4777-8777-777777777777"),
    name: "Łukasz O'Neil-Nguyễn",
    email: "",
    phone: "",
  },
  home: {
    id: asId<"home">("88888888-8888-4888-8888-888888888888"),
    addressLine: "118 Pelican Row",
    city: "Bay",
    region: "TX",
    postalCode: "77001",
    elevationFt: 0,
    builder: "",
    latitude: null,
    longitude: null,
  },
  weatherFileId: null,
  note: "",
  createdAt: "2026-06-01T12:00:00.000Z",
};

export const PLAIN_BRAND: PacketBrand = {
  companyName: "Levee Road Home Comfort",
  logoPng: null,
  accentHex: "#0f4c5c",
  licenceLine: "State licence 00-1234 (invented)",
  contactLines: ["118 Levee Road", "555-0142", "office@leveeroad.example"],
  coverWords: "Keep this with the house.",
  closingWords: "Ask us anything.",
  termsWords: "",
  coverStyle: "ledger",
  terms: { partsWarrantyYears: 10, laborWarrantyYears: 2, maintenanceMonths: 12 },
};

function signed(stage: StageKey, inputs: StageInputs, context: JobContext): StageRecord {
  const evaluation = evaluateJob(context);
  return {
    id: asId<"stage record">("99999999-9999-4999-8999-999999999999"),
    jobId: JOB_ID,
    stage,
    revision: 1,
    state: "signed",
    version: 2,
    inputs: inputs[stage],
    findings: evaluation.findings[stage],
    verdict: evaluation.verdicts[stage],
    engineVersion: evaluation.engineVersion,
    signedAt: "2026-07-21T16:00:00.000Z",
    signatureName: "Inés Barragán-Todd",
    reopenReason: null,
    updatedAt: "2026-07-21T16:00:00.000Z",
    updatedByName: "Inés Barragán-Todd",
  } as StageRecord;
}

/** Three days of half-hourly invented humidity. */
const POINTS = Array.from({ length: 144 }, (_, at) => ({
  atMs: Date.UTC(2026, 7, 1) + at * 1_800_000,
  relativeHumidityPercent: 50 + 6 * Math.sin(at / 9),
  dewPointF: 56 + 2 * Math.sin(at / 9),
}));

/** Everything the packets of a whole job are made of, all invented. `without` leaves stages unbegun. */
export function packetPartsOf(
  change: Partial<PacketParts> = {},
  without: readonly StageKey[] = [],
  context: JobContext = FULL_JOB,
): PacketParts {
  const records = Object.fromEntries(
    STAGES.map((stage) => [stage, without.includes(stage) ? null : signed(stage, context.inputs, context)]),
  ) as JobRecords;
  return {
    job: JOB,
    records,
    context,
    evaluation: evaluateJob(context),
    log: {
      imports: [],
      points: POINTS,
      limitPct: 55,
      timeZone: "America/Chicago",
    },
    controls: { id: asId<"control model">("33333333-3333-4333-8333-333333333333"), ...twoStageThermostat },
    revisions: Object.fromEntries(
      STAGES.map((stage) => [stage, records[stage] ? [records[stage]] : []]),
    ) as unknown as PacketParts["revisions"],
    photos: [],
    forecast: null,
    fitPicture: null,
    brand: PLAIN_BRAND,
    timeZone: "America/Chicago",
    paper: "letter",
    documentId: "Job 1042, packet 1",
    revisionNote: "",
    createdOn: "2026-07-31",
    ...change,
  };
}

/** Photographs as a phone would have sent them, made small: no two alike. */
export async function packetPhotosOf(count: number): Promise<readonly PrintedPhoto[]> {
  const photos: PrintedPhoto[] = [];
  for (let at = 0; at < count; at += 1) {
    const [widthPx, heightPx] = at % 3 === 0 ? [360, 480] : [480, 360];
    const channels = 3;
    // A pattern that a JPEG cannot make small, so that the size is that of real pictures.
    const pixels = Buffer.alloc(widthPx * heightPx * channels);
    for (let byte = 0; byte < pixels.length; byte += 1)
      pixels[byte] = (byte * 31 + at * 17 + (byte >> 7)) & 255;
    const jpeg = await sharp(pixels, { raw: { width: widthPx, height: heightPx, channels } })
      .blur(2)
      .jpeg({ quality: 70 })
      .toBuffer();
    photos.push({
      jpeg: new Uint8Array(jpeg),
      widthPx,
      heightPx,
      caption: `Photograph ${at + 1} of the attic`,
    });
  }
  return photos;
}
