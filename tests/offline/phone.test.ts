import { beforeEach, expect, test } from "vitest";
import type { FieldBundle } from "@/lib/domain/field-bundle";
import type { Answer, Doors, NewBundle } from "@/lib/offline/doors";
import { createPhone } from "@/lib/offline/phone";
import { type FieldStore, openFieldStore } from "@/lib/offline/store";
import { makePhoneServer } from "../support/phone-server";
import { freshBrowser, JOB, NOON } from "../support/test-phone";

beforeEach(freshBrowser);

const bundleOf = (userId: string, jobs: readonly string[] = [JOB]): FieldBundle =>
  ({
    bundleVersion: 1,
    person: { userId, name: userId, role: "tech", maySignStartup: true },
    company: { tenantId: "company", name: "Company", timeZone: "UTC", accent: null, logoHref: null },
    limits: {},
    instruments: [],
    models: {},
    controls: {},
    jobs: jobs.map((id) => ({
      id,
      home: {},
      customer: {},
      records: {},
      modelId: null,
      controlId: null,
      questions: [],
      photos: [],
    })),
  }) as unknown as FieldBundle;

const told = (userId: string, jobs: readonly string[] = [JOB]): Answer<NewBundle> => ({
  done: true,
  value: { bundle: bundleOf(userId, jobs), etag: null },
});
const refused = (why: "sign in" | "other person" | "removed"): Answer<never> => ({
  done: false,
  why,
  message: why,
});

/** A phone with doors that a test can change, and whoever is signed in at the server. */
function open(
  options: {
    readonly store?: FieldStore;
    readonly doors?: Partial<Doors>;
    readonly alone?: (work: () => Promise<void>) => Promise<void>;
    readonly notes?: Map<string, number>;
    readonly owner?: string;
  } = {},
) {
  const notes = options.notes ?? new Map<string, number>();
  const server = makePhoneServer();
  /** What the next contacts are answered; the last one stays. */
  const contacts: Answer<NewBundle | "unchanged">[] = [told("ann")];
  let who: string | null = options.owner ?? null;
  let made = 0;
  const phone = createPhone({
    store: options.store ?? openFieldStore(),
    doors: {
      ...server.doors,
      readBundle: async () => (contacts.length > 1 ? contacts.shift() : contacts[0]) ?? told("ann"),
      ...options.doors,
    },
    newId: () => `id-${++made}`,
    now: () => new Date(NOON),
    owner: {
      get: () => who,
      set: (next) => {
        who = next;
      },
    },
    unsent: {
      get: (of) => notes.get(of) ?? 0,
      set: (of, count) => void notes.set(of, count),
    },
    alone: options.alone ?? ((work) => work()),
    tellOthers: () => undefined,
  });
  return { phone, server, contacts, owner: () => who };
}

test("a first contact fills the phone; without one it shows nothing", async () => {
  const { phone, owner } = open();
  await phone.reload();
  expect(phone.state().phase).toBe("nothing");
  await phone.refresh();
  expect(phone.state()).toMatchObject({ phase: "ready", link: "online", bundle: { personName: "ann" } });
  expect(owner()).toBe("company.ann");
});

test("an ended sign-in keeps what was entered and sends it after signing in again", async () => {
  const { phone, server, contacts } = open();
  await phone.refresh();
  contacts[0] = refused("sign in");
  await phone.enter(JOB, "outdoorDbF", 91);
  await phone.refresh();
  expect(phone.state()).toMatchObject({ phase: "ready", link: "sign in" });
  await phone.send();
  expect(server.inputs()).toEqual({ outdoorDbF: 91 });
});

test("another person at the same phone sees nothing of the first, who finds everything again", async () => {
  const { phone, server, contacts } = open();
  await phone.refresh();
  await phone.enter(JOB, "outdoorDbF", 91);
  contacts.splice(0, 1, refused("other person"), told("bo", []));
  await phone.refresh();
  expect(phone.state().bundle?.personName).toBe("bo");
  expect(phone.state().drafts).toEqual({});
  await phone.send();
  expect(server.inputs()).toEqual({});
  contacts[0] = told("ann");
  await phone.refresh();
  expect(phone.state().drafts[JOB]?.pending.outdoorDbF?.value).toBe(91);
});

test("after removal unsent readings are offered first, then everything is taken off the phone", async () => {
  const { phone, server, contacts, owner } = open();
  await phone.refresh();
  await phone.enter(JOB, "outdoorDbF", 91);
  const photo = { jobId: JOB, field: null, caption: "Drain", takenAt: NOON, latitude: null, longitude: null };
  await phone.keepPhoto(
    { ...photo, type: "image/jpeg", bytes: new Blob(["nine byte"]) },
    new Blob(["full size"]),
  );
  contacts.splice(0, 1, refused("removed"), refused("sign in"));
  await phone.refresh();
  expect([...server.handedOver.values()]).toEqual([
    JSON.stringify([{ jobId: JOB, fields: { outdoorDbF: { base: null, value: 91 } } }]),
  ]);
  expect(server.photos.size).toBe(1);
  expect(owner()).toBeNull();
  expect(phone.state()).toMatchObject({ phase: "nothing", drafts: {}, photos: [], bundle: null });
  expect(phone.state().news).toMatch(/You no longer work for Company/);
  const left = openFieldStore();
  expect(await left.readDrafts("company.ann")).toEqual({});
  expect(await left.readBundle("company.ann")).toBeNull();
  expect(await left.originals("company.ann")).toEqual([]);
});

test("a removal without a signal for the hand-over erases nothing yet", async () => {
  const { phone, contacts, owner } = open({
    doors: { handOver: async () => ({ done: false, why: "later", message: "lost" }) },
  });
  await phone.refresh();
  await phone.enter(JOB, "outdoorDbF", 91);
  contacts[0] = refused("removed");
  await phone.refresh();
  expect(owner()).toBe("company.ann");
  expect(phone.state().drafts[JOB]?.pending.outdoorDbF?.value).toBe(91);
});

test("a job that is not assigned any more is handed over and taken off, the others stay", async () => {
  const other = "01900000-0000-7000-8000-000000000002";
  const { phone, server, contacts } = open();
  contacts[0] = told("ann", [JOB, other]);
  await phone.refresh();
  await phone.enter(JOB, "outdoorDbF", 91);
  await phone.enter(other, "outdoorDbF", 92);
  contacts[0] = told("ann", [other]);
  await phone.refresh();
  expect(server.handedOver.size).toBe(1);
  expect(Object.keys(phone.state().drafts)).toEqual([other]);
  expect(phone.state().news).toMatch(/not yours any more/);
});

test("a picture stays the object that it is while readings go: it is not read and drawn anew", async () => {
  const { phone } = open();
  await phone.refresh();
  const photo = { jobId: JOB, field: null, caption: "Drain", takenAt: NOON, latitude: null, longitude: null };
  await phone.keepPhoto({ ...photo, type: "image/jpeg", bytes: new Blob(["nine byte"]) }, null);
  await phone.send();
  const [before] = phone.state().photos;
  expect(before?.state.at).toBe("office");
  await phone.enter(JOB, "outdoorDbF", 91);
  await phone.send();
  expect(phone.state().photos[0]).toBe(before);
});

test("what is typed is said to be kept only when the store has it", async () => {
  const store = openFieldStore();
  let finish: () => void = () => undefined;
  const slow: FieldStore = {
    ...store,
    changeDraft: async (...asked) => {
      await new Promise<void>((done) => {
        finish = done;
      });
      return store.changeDraft(...asked);
    },
  };
  const { phone } = open({ store: slow });
  await phone.refresh();
  const entering = phone.enter(JOB, "outdoorDbF", 91);
  expect(phone.state()).toMatchObject({ keeping: true, drafts: { [JOB]: { pending: { outdoorDbF: {} } } } });
  await new Promise((soon) => setTimeout(soon, 5));
  finish();
  await entering;
  expect(phone.state().keeping).toBe(false);
});

test("a full phone says so, shows what was typed, and keeps it as soon as there is room", async () => {
  const store = openFieldStore();
  let isFull = false;
  const narrow: FieldStore = {
    ...store,
    changeDraft: async (...asked) => {
      if (isFull) throw new DOMException("no room", "QuotaExceededError");
      return store.changeDraft(...asked);
    },
  };
  const { phone } = open({ store: narrow });
  await phone.refresh();
  isFull = true;
  await phone.enter(JOB, "outdoorDbF", 91);
  await phone.enter(JOB, "supplyVoltage", 240);
  expect(phone.state().storageProblem).toMatch(/storage is full/);
  expect(phone.state().drafts[JOB]?.pending).toMatchObject({
    outdoorDbF: { value: 91 },
    supplyVoltage: { value: 240 },
  });
  // Looking at the store again must not wipe what is only in memory.
  await phone.reload();
  expect(phone.state().drafts[JOB]?.pending.outdoorDbF?.value).toBe(91);
  isFull = false;
  await phone.settle();
  expect(phone.state().storageProblem).toBeNull();
  expect((await store.readDrafts("company.ann"))[JOB]?.pending).toMatchObject({
    outdoorDbF: { value: 91 },
    supplyVoltage: { value: 240 },
  });
});

test("a browser that cleared its memory between two visits: the person hears how much was lost, once", async () => {
  const notes = new Map<string, number>();
  const first = open({ notes });
  await first.phone.refresh();
  await first.phone.enter(JOB, "outdoorDbF", 91);
  await first.phone.enter(JOB, "supplyVoltage", 240);
  expect(notes.get("company.ann")).toBe(2);
  await first.phone.send();
  expect(notes.get("company.ann")).toBe(0);
  await first.phone.enter(JOB, "supplyVoltage", 241);

  freshBrowser();
  const second = open({ notes, owner: "company.ann" });
  await second.phone.reload();
  expect(second.phone.state().news).toMatch(
    /cleared what this page kept. One entry of yours had not been sent/,
  );
  await second.phone.refresh();
  expect(second.phone.state()).toMatchObject({ phase: "ready", bundle: { personName: "ann" } });
  expect(notes.get("company.ann")).toBe(0);
  // Somebody else's unsent work is no loss of theirs.
  second.contacts.splice(0, 1, refused("other person"), told("bo", []));
  await second.phone.enter(JOB, "outdoorDbF", 91);
  await second.phone.refresh();
  expect([notes.get("company.ann"), notes.get("company.bo") ?? 0]).toEqual([1, 0]);
});

test("signing out puts everything away and loses nothing", async () => {
  const { phone } = open();
  await phone.refresh();
  await phone.enter(JOB, "outdoorDbF", 91);
  await phone.forgetOwner();
  expect(phone.state()).toMatchObject({ phase: "nothing", bundle: null, drafts: {} });
  await phone.refresh();
  expect(phone.state().drafts[JOB]?.pending.outdoorDbF?.value).toBe(91);
});

test("two pages of one phone that send at the same moment send once", async () => {
  const store = openFieldStore();
  let isTaken = false;
  /** As the browser's locks: whoever comes while another is at it goes away. */
  const alone = async (work: () => Promise<void>) => {
    if (isTaken) return;
    isTaken = true;
    await work().finally(() => {
      isTaken = false;
    });
  };
  const first = open({ store, alone });
  const second = open({ store, alone, doors: { sendFields: first.server.doors.sendFields } });
  await first.phone.refresh();
  await second.phone.refresh();
  await first.phone.enter(JOB, "outdoorDbF", 91);
  await second.phone.enter(JOB, "supplyVoltage", 240);
  await Promise.all([first.phone.send(), second.phone.send(), first.phone.send()]);
  expect(first.server.written).toHaveLength(1);
  expect(first.server.inputs()).toEqual({ outdoorDbF: 91, supplyVoltage: 240 });
});

test("with the answer to its own readings a phone may hear that nothing is new; then it asks no more", async () => {
  const asked: string[] = [];
  const made = makePhoneServer();
  const sendFields: Doors["sendFields"] = async (who, jobId, upload, waiting, tag) => {
    asked.push(`upload ${tag}`);
    const answer = await made.doors.sendFields(who, jobId, upload, waiting, tag);
    // The office's tag: this record is at version 4, everything else is as it was at first.
    return answer.done
      ? { done: true, value: { ...answer.value, draftVersion: 4, bundleTag: news } }
      : answer;
  };
  let news = '"all.4"';
  const readBundle: Doors["readBundle"] = async (_who, tag) => {
    asked.push(`bundle ${tag}`);
    return { done: true, value: { bundle: bundleOf("ann"), etag: '"all.3"' } };
  };
  const { phone } = open({ doors: { sendFields, readBundle } });
  await phone.meet();
  await phone.enter(JOB, "outdoorDbF", 91);
  await phone.meet();
  expect(asked).toEqual(["bundle null", 'upload "all.3"']);
  expect(phone.state().bundle?.jobs[0]).toMatchObject({ version: 4, isSigned: false });
  expect(phone.state().bundle?.jobs[0]?.context.inputs.startup_record).toMatchObject({ outdoorDbF: 91 });
  // With news, or with nothing to send, it asks as ever, by the tag it has made.
  news = '"other.5"';
  await phone.enter(JOB, "outdoorDbF", 92);
  await phone.meet();
  await phone.meet();
  expect(asked.slice(2)).toEqual(['upload "all.4"', 'bundle "all.4"', 'bundle "all.3"']);
});
