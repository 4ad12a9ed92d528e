import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import type { Prisma } from "@/lib/db/generated/client";
import { sqlState } from "@/lib/db/transaction";
import { withTenant } from "@/lib/db/with-tenant";
import type { TenantScope } from "@/lib/domain/scope";
import { addJob } from "../support/a-job";
import { makeCompany } from "../support/companies";

let scope: TenantScope;
let jobId: string;
let recordId: string;

beforeEach(async () => {
  scope = await makeCompany();
  jobId = (await withTenant(scope, (tx) => addJob(tx, scope))).id;
  recordId = (await add({})).id;
});
afterAll(closeDatabase);

function add(fields: Partial<Prisma.StageRecordUncheckedCreateInput>) {
  return withTenant(scope, (tx) =>
    tx.stageRecord.create({
      data: {
        tenantId: scope.tenantId,
        jobId,
        stage: "startup_record",
        revision: 1,
        schemaVersion: 1,
        inputs: { returnDryBulbF: 75 },
        engineVersion: "1",
        createdBy: scope.userId,
        updatedBy: scope.userId,
        ...fields,
      },
    }),
  );
}

function change(data: Prisma.StageRecordUncheckedUpdateManyInput) {
  return withTenant(scope, (tx) =>
    tx.stageRecord.updateMany({ where: { tenantId: scope.tenantId, id: recordId }, data }),
  );
}

const signature = () => ({
  state: "signed",
  signedBy: scope.userId,
  signedAt: new Date(),
  signatureName: "A. Tech",
});
const codeOf = (attempt: Promise<unknown>) =>
  attempt.then(
    () => "allowed",
    (error) => sqlState(error),
  );

describe("a draft", () => {
  test("is changed, signed and removed", async () => {
    expect(await codeOf(change({ inputs: { returnDryBulbF: 76 } }))).toBe("allowed");
    expect(await codeOf(withTenant(scope, (tx) => tx.stageRecord.deleteMany({})))).toBe("allowed");
  });

  test("is not signed without who, when and a name", async () => {
    expect(await codeOf(change({ state: "signed" }))).toBe("23514");
    expect(await codeOf(change({ ...signature(), signatureName: null }))).toBe("23514");
    expect(await codeOf(change({ signedBy: scope.userId }))).toBe("23514");
  });

  test("is never superseded, nor moved to another stage or revision", async () => {
    expect(await codeOf(change({ ...signature(), state: "superseded" }))).toBe("DW001");
    expect(await codeOf(change({ stage: "airflow_setup" }))).toBe("DW001");
    expect(await codeOf(change({ revision: 2, reopenReason: "x" }))).toBe("DW001");
  });

  test("is the only draft of its stage", async () => {
    expect(await codeOf(add({ revision: 2, reopenReason: "A second draft" }))).toBe("23505");
  });
});

describe("a signed record", () => {
  beforeEach(async () => {
    await change(signature());
  });

  test.each<[string, () => Prisma.StageRecordUncheckedUpdateManyInput]>([
    ["inputs", () => ({ inputs: { returnDryBulbF: 74 } })],
    ["provenance", () => ({ provenance: { returnDryBulbF: { by: "someone else" } } })],
    ["findings", () => ({ findings: [{ verdict: "meets" }] })],
    ["verdict", () => ({ verdict: "meets" })],
    ["signer's name", () => ({ signatureName: "B. Other" })],
    ["time of signing", () => ({ signedAt: new Date(0) })],
    ["engine version", () => ({ engineVersion: "2" })],
    ["inputs while being superseded", () => ({ state: "superseded", inputs: { returnDryBulbF: 74 } })],
    ["state back to draft", () => ({ state: "draft", signedBy: null, signedAt: null, signatureName: null })],
  ])("keeps its %s", async (_, data) => {
    expect(await codeOf(change(data()))).toBe("DW001");
  });

  test("is not removed", async () => {
    expect(await codeOf(withTenant(scope, (tx) => tx.stageRecord.deleteMany({})))).toBe("DW001");
  });

  test("gives way to a new revision with a reason, and stays as it was", async () => {
    expect(await codeOf(add({ revision: 2 }))).toBe("23514");
    expect(await codeOf(add({ revision: 2, reopenReason: "Wet-bulb sock was dry" }))).toBe("allowed");
    expect(await codeOf(change({ state: "superseded" }))).toBe("allowed");
    expect(await codeOf(change({ state: "signed" }))).toBe("DW001");
    const old = await withTenant(scope, (tx) => tx.stageRecord.findFirst({ where: { revision: 1 } }));
    expect(old?.inputs).toEqual({ returnDryBulbF: 75 });
  });

  test("is the only signed one of its stage", async () => {
    expect(await codeOf(add({ revision: 2, reopenReason: "x", ...signature() }))).toBe("23505");
  });
});
