import { afterAll, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { company } from "@/lib/db/company";
import type { TenantScope } from "@/lib/domain/scope";
import { activityView } from "@/lib/services/activity";
import { brandView, readLogo, removeLogo, saveBrand, saveLogo } from "@/lib/services/brand";
import { changeLimit, rulesView } from "@/lib/services/rules";
import { makeCompany } from "../support/companies";

afterAll(closeDatabase);

const BRAND = {
  displayName: "Example Comfort",
  licenseLine: "",
  phone: "",
  email: "",
  website: "",
  addressLines: ["1 Example Street"],
  accentColor: "#7a1f4f",
  coverWords: "",
  closingWords: "",
  coverWordsEs: "",
  closingWordsEs: "",
  termsWords: "",
  termsWordsEs: "",
  paper: "letter" as const,
  coverStyle: "ledger" as const,
  partsWarrantyYears: null,
  laborWarrantyYears: null,
  maintenanceMonths: null,
};
const LOGO = Buffer.from(
  '<svg xmlns="http://www.w3.org/2000/svg" width="200" height="100"><rect width="200" height="100" fill="#246"/></svg>',
);
const limitOf = async (scope: TenantScope, key: string) =>
  (await rulesView(scope)).chapters.flatMap(({ limits }) => limits).find((limit) => limit.key === key);

test("a limit is set, told with its reason, and taken back to its seed", async () => {
  const scope = await makeCompany();
  const key = "airflow.goodPct";
  await changeLimit(scope, { key, value: "12 %", reason: "our crews hold this" });
  expect(await limitOf(scope, key)).toMatchObject({ inForce: 12, seed: 15, isOwn: true });
  await changeLimit(scope, { key, value: null, reason: "too strict" });
  expect(await limitOf(scope, key)).toMatchObject({ inForce: 15, isOwn: false });
  const { history } = await rulesView(scope);
  expect(history.map(({ revision, reason }) => [revision, reason])).toEqual([
    [2, "too strict"],
    [1, "our crews hold this"],
  ]);
  // Beside the limit itself stand its own changes only.
  await changeLimit(scope, { key: "airflow.fairPct", value: "22", reason: "another one" });
  const limits = (await rulesView(scope)).chapters.flatMap((chapter) => chapter.limits);
  const changesOf = (one: string) => limits.find((limit) => limit.key === one)?.history ?? [];
  expect(changesOf(key).map(({ reason, who }) => [reason, who !== ""])).toEqual([
    ["too strict", true],
    ["our crews hold this", true],
  ]);
  expect(changesOf("airflow.fairPct").map(({ reason }) => reason)).toEqual(["another one"]);
  expect(changesOf("airflow.coilFrostF")).toEqual([]);
  const { lines } = await activityView(scope, undefined);
  expect(lines[1]).toMatchObject({ what: "rule limits changed", reason: "too strict" });
});

test("owners who change different limits at the same time all get theirs", async () => {
  const scope = await makeCompany();
  const values = { "airflow.goodPct": 12, "airflow.fairPct": 22, "airflow.coilFrostF": 33 };
  await Promise.all(
    Object.entries(values).map(([key, value]) =>
      changeLimit(scope, { key, value: String(value), reason: "at once" }),
    ),
  );
  expect(await company(scope).limitOverrides()).toEqual(values);
});

test("a refused value changes nothing and names the field", async () => {
  const scope = await makeCompany();
  await expect(
    changeLimit(scope, { key: "airflow.goodPct", value: "31", reason: "x" }),
  ).rejects.toMatchObject({ code: "INVALID_INPUT", fields: [{ field: "value" }] });
  expect((await rulesView(scope)).history).toEqual([]);
});

test("a stored value outside its range is shown for mending, and can be taken away", async () => {
  const scope = await makeCompany();
  await company(scope).setLimits({ "airflow.goodPct": 99, "airflow.gone": 1 }, "from another release");
  const { problems } = await rulesView(scope);
  expect(problems.map(({ field }) => field).sort()).toEqual(["airflow.gone", "airflow.goodPct"]);
  for (const { field } of problems) await changeLimit(scope, { key: field, value: null, reason: "mended" });
  expect((await rulesView(scope)).problems).toEqual([]);
});

test("the form and the logo do not undo each other, also when sent at once", async () => {
  const scope = await makeCompany();
  await Promise.all([saveLogo(scope, LOGO), saveBrand(scope, BRAND)]);
  const { logoHref, displayName, addressText } = await brandView(scope);
  expect([displayName, addressText]).toEqual(["Example Comfort", "1 Example Street"]);
  expect(logoHref).toMatch(/^\/api\/brand\/logo\?v=[0-9a-f]{12}$/);
  expect((await readLogo(scope)).mime).toBe("image/png");
  await removeLogo(scope);
  await expect(readLogo(scope)).rejects.toMatchObject({ code: "NOT_FOUND" });
  await expect(readLogo(await makeCompany())).rejects.toMatchObject({ code: "NOT_FOUND" });
});

test("of two owners who have the form open the second is told, and nothing of the first is lost", async () => {
  const scope = await makeCompany();
  await saveBrand(scope, BRAND);
  const { startedFrom } = await brandView(scope);
  // A logo meanwhile is no other form.
  await saveLogo(scope, LOGO);
  await saveBrand(scope, { ...BRAND, phone: "555-0100", startedFrom });
  await expect(saveBrand(scope, { ...BRAND, email: "a@example.com", startedFrom })).rejects.toMatchObject({
    code: "CONFLICT",
  });
  const now = await brandView(scope);
  expect([now.phone, now.email]).toEqual(["555-0100", BRAND.email]);
  await saveBrand(scope, { ...BRAND, email: "a@example.com", startedFrom: now.startedFrom });
});

test("every word of a brand that is changed stays on the trail", async () => {
  const scope = await makeCompany();
  const words = [
    "coverWords",
    "coverWordsEs",
    "closingWords",
    "closingWordsEs",
    "termsWords",
    "termsWordsEs",
  ];
  await saveBrand(scope, { ...BRAND, ...Object.fromEntries(words.map((key) => [key, `${key} before`])) });
  await saveBrand(scope, { ...BRAND, ...Object.fromEntries(words.map((key) => [key, `${key} after`])) });
  const { lines } = await activityView(scope, undefined);
  const changes = lines[0]?.changes ?? [];
  expect(changes.map((one) => one.key).toSorted()).toEqual(words.toSorted());
  for (const { key, label, before } of changes) {
    expect(before).toEqual({ kind: "text", text: `${key} before` });
    expect(label).not.toBe(key);
  }
});

test("the trail tells of a brand what differs", async () => {
  const scope = await makeCompany();
  await saveBrand(scope, BRAND);
  await saveBrand(scope, { ...BRAND, phone: "555-0100" });
  const { lines } = await activityView(scope, undefined);
  expect(lines[0]?.changes).toEqual([
    { key: "phone", label: "Phone", before: { kind: "none" }, after: { kind: "text", text: "555-0100" } },
  ]);
});
