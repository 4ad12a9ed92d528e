import { randomUUID } from "node:crypto";
import { seededChance } from "@/lib/engineering/simulation/seeded-draws";
import { networkDoors } from "@/lib/offline/doors";
import type { Photo } from "@/lib/offline/outbox";
import { FAULTS, type Fault, startFaultProxy } from "./fault-proxy";
import { type FieldApp, type PhoneOfTest, upload, withFieldApp } from "./field-app";
import { PHOTO } from "./photo";

export type FaultReport = {
  readonly rounds: number;
  readonly requests: number;
  readonly seen: ReadonlyMap<Fault, number>;
  /** What was wrong; empty when nothing was. */
  readonly faults: readonly string[];
};

/** Readings that stay possible together whatever the order. */
const FIELDS = [
  "outdoorDbF",
  "supplyVoltage",
  "secondAirflowCfm",
  "firstAirflowCfm",
  "outdoorUnitAmps",
] as const;
const LEAST: Readonly<Record<(typeof FIELDS)[number], number>> = {
  outdoorDbF: 60,
  supplyVoltage: 200,
  secondAirflowCfm: 700,
  firstAirflowCfm: 500,
  outdoorUnitAmps: 5,
};

/**
 * Two phones of one tech work on one record through a connection that spoils three of four requests. Each round one
 * phone changes a field, or sends a photo every tenth round, and repeats until it has an answer. At the end the
 * record holds what the phones believe it holds, and each change and photo is there once.
 */
export function faultRounds(rounds: number, seed: number): Promise<FaultReport> {
  return withFieldApp(1, async (app) => {
    const phone = app.phones[0];
    if (!phone) throw new Error("There is no phone.");
    const random = seededChance(seed);
    const proxy = await startFaultProxy(app.address, () =>
      random() < 0.25 ? "none" : (FAULTS[Math.floor(random() * FAULTS.length)] ?? "none"),
    );
    const devices = [new Map<string, unknown>(), new Map<string, unknown>()];
    const believed = new Map<string, unknown>();
    const photos: string[] = [];
    let requests = 0;
    let changes = 0;
    const faults: string[] = [];
    try {
      for (let round = 1; round <= rounds; round++) {
        const bases = devices[round % 2] ?? new Map();
        if (round % 10 === 0) {
          const id = randomUUID();
          requests += await sendPhoto(proxy.address, app, phone, id);
          photos.push(id);
          continue;
        }
        const field = FIELDS[Math.floor(random() * FIELDS.length)] ?? "outdoorDbF";
        const value = LEAST[field] + Math.floor(random() * 30);
        const sent = upload({ [field]: { base: bases.get(field) ?? null, value } });
        const { answer, tries } = await sendUntilTold(proxy.address, app, phone, sent);
        requests += tries;
        const before = believed.get(field) ?? null;
        if (answer.accepted[field] === value) {
          if (before !== value) changes += 1;
          believed.set(field, value);
        } else if (answer.conflicts[0]?.theirs !== before)
          faults.push(`round ${round}: lost ${field} ${value}`);
        // As a phone does: what it was told is what it starts from next.
        for (const [key, now] of Object.entries(answer.inputs)) if (now !== null) bases.set(key, now);
      }
    } finally {
      await proxy.stop();
    }
    const kept = await app.recordOf(phone.jobId);
    for (const [field, value] of believed)
      if (kept.inputs[field] !== value) faults.push(`${field} is ${kept.inputs[field]}, not ${value}`);
    if (kept.saves !== changes) faults.push(`${changes} changes were saved ${kept.saves} times`);
    if (kept.photos.toSorted().join() !== photos.toSorted().join())
      faults.push(`${photos.length} photos became ${kept.photos.length}`);
    return { rounds, requests, seen: proxy.seen, faults };
  });
}

type Told = {
  readonly accepted: Readonly<Record<string, unknown>>;
  readonly conflicts: readonly { readonly theirs: unknown }[];
  readonly inputs: Readonly<Record<string, unknown>>;
};

async function sendUntilTold(at: string, app: FieldApp, phone: PhoneOfTest, sent: object) {
  const body = JSON.stringify(sent);
  const { told, tries } = await untilTold(`${at}/api/jobs/${phone.jobId}/startup`, body, app, phone);
  return { answer: told as Told, tries };
}

async function sendPhoto(at: string, app: FieldApp, phone: PhoneOfTest, id: string): Promise<number> {
  let tries = 0;
  // The phone's own way of sending a picture and of telling a whole answer from a spoilt one.
  const doors = networkDoors((path, init) => {
    tries += 1;
    const headers = {
      ...(init?.headers as Record<string, string>),
      cookie: phone.cookie,
      connection: "close",
    };
    return fetch(`${at}${path}`, { ...init, headers });
  });
  const photo: Photo = {
    ...{
      id,
      who: `${app.tenantId}.${phone.userId}`,
      jobId: phone.jobId,
      field: "outdoorDbF",
      caption: "Shade",
    },
    ...{ takenAt: "2026-07-01T12:00:00.000Z", latitude: 29.3, longitude: -94.8, type: "image/jpeg" },
    ...{ bytes: new Blob([new Uint8Array(PHOTO)]), state: { at: "phone" } },
  };
  for (;;) {
    const answer = await doors.sendPhoto(photo);
    if (answer.done) return tries;
    // Anything but "later" would leave the picture on the phone for good.
    if (answer.why !== "later" || tries >= 60) throw new Error(`photo: ${answer.why} ${answer.message}`);
  }
}

/** Sends the very same again until a whole answer came; a refusal ends it. */
async function untilTold(path: string, body: BodyInit, app: FieldApp, phone: PhoneOfTest) {
  const headers = {
    cookie: phone.cookie,
    "x-dewledger-person": phone.userId,
    "x-dewledger-company": app.tenantId,
    connection: "close",
  };
  let last = "";
  for (let tries = 1; tries <= 60; tries++) {
    try {
      const answer = await fetch(path, { method: "PUT", headers, body });
      const told: unknown = await answer.json();
      if (answer.ok) return { told, tries };
      last = `${answer.status} ${JSON.stringify(told)}`;
      if (answer.status < 500) throw new Refused(`${answer.status} ${JSON.stringify(told)}`);
    } catch (error) {
      if (error instanceof Refused) throw error;
      last = String(error instanceof Error ? (error.cause ?? error) : error);
    }
  }
  throw new Error(`Sixty tries got no answer; the last: ${last}`);
}

class Refused extends Error {}
