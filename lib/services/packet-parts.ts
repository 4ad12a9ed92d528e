import { catalog } from "@/lib/db/catalog";
import { company } from "@/lib/db/company";
import { forecasts } from "@/lib/db/forecasts";
import { forecastsLived } from "@/lib/db/forecasts-lived";
import { stageRecords } from "@/lib/db/stage-records";
import { evaluateJob } from "@/lib/domain/evaluate";
import { asId } from "@/lib/domain/ids";
import type { Job, StageRecord } from "@/lib/domain/jobs";
import type { Packet } from "@/lib/domain/packets";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGES, type StageKey } from "@/lib/domain/stages";
import { packetBrand } from "./brand";
import { jobContext } from "./evaluate";
import { logPanelView } from "./log-view";
import { packetPhotos } from "./packet-photos";
import type { PacketParts } from "./packet-views/parts";

/** Reads everything a packet is made of, blank where it names day and number. Inside one transaction. */
export async function packetParts(
  scope: TenantScope,
  job: Job,
  { kind, paper, language }: Pick<Packet, "kind" | "paper" | "language">,
): Promise<PacketParts> {
  // One after the other: inside one transaction they share one connection.
  const records = await stageRecords(scope).latest(job.id);
  const context = await jobContext(scope, job, records);
  const { humidityLimitPct } = context.inputs.load_summary;
  const log = await logPanelView(scope, job, context.log?.importId ?? null, humidityLimitPct);
  const { controlModelId } = context.inputs.control_setup;
  // In the version the job rests on, which may be off the lists.
  const controls =
    controlModelId === null ? null : await catalog(scope).findControl(asId<"control model">(controlModelId));
  const revisions: (readonly [StageKey, readonly StageRecord[]])[] = [];
  for (const stage of STAGES) revisions.push([stage, await stageRecords(scope).revisions(job.id, stage)]);
  return {
    job,
    records,
    context,
    evaluation: evaluateJob(context),
    log,
    controls,
    revisions: Object.fromEntries(revisions) as PacketParts["revisions"],
    brand: await packetBrand(scope, language),
    timeZone: (await company(scope).get()).timeZone,
    // Only what a kind prints is read.
    forecast: kind === "file" ? await forecasts(scope).whole(job.id) : null,
    fitPicture:
      kind === "review" && context.lived !== null
        ? await forecastsLived(scope).picture(context.lived.importId)
        : null,
    photos: kind === "file" ? await packetPhotos(scope, job) : [],
    paper,
    documentId: "",
    revisionNote: "",
    createdOn: "",
  };
}
