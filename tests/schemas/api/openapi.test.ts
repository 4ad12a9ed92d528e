import { describe, expect, test } from "vitest";
import { WEBHOOK_EVENT_KEYS } from "@/lib/domain/webhooks";
import { API_ENDPOINTS } from "@/lib/schemas/api";
import { openApiDocument, parametersOf } from "@/lib/schemas/api/openapi";
import { endpointReference } from "@/lib/schemas/api/reference";
import { appFiles } from "../../support/doors";

const document = openApiDocument("https://office.example");
// biome-ignore lint/suspicious/noExplicitAny: read as a stranger would
const paths = document.paths as any;

describe("the description of the API", () => {
  test("names every door there is, and no other", () => {
    const files = appFiles(/^app\/api\/v1\/.*route\.ts$/).filter(
      (file) => !/openapi\.json|\.\.\.rest/.test(file),
    );
    const addresses = files.map((file) =>
      file.replace(/^app\/api\/v1|\/route\.ts$/g, "").replace(/\[(\w+)\]/g, "{$1}"),
    );
    expect(Object.keys(paths).toSorted()).toEqual(addresses.toSorted());
    const names = API_ENDPOINTS.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
  });

  test("says of each parameter in an address that it is one", () => {
    for (const endpoint of API_ENDPOINTS) {
      const inPath = parametersOf(endpoint).filter((one) => one.in === "path");
      expect(inPath.map(({ name }) => `{${name}}`)).toEqual(endpoint.path.match(/\{\w+\}/g) ?? []);
      expect(inPath.every(({ required }) => required)).toBe(true);
    }
  });

  test("the list of jobs: its limit, its verdicts, its cursor", () => {
    const { parameters, responses } = paths["/jobs"].get;
    const limit = parameters.find(({ name }: { name: string }) => name === "limit");
    expect(limit).toMatchObject({
      in: "query",
      required: false,
      schema: { type: "integer", minimum: 1, maximum: 200, default: 50 },
    });
    const { properties } = responses["200"].content["application/json"].schema;
    expect(properties.jobs.items.properties.verdict.anyOf).toContainEqual(
      expect.objectContaining({ enum: ["meets", "falls short", "can't tell", "not measured"] }),
    );
    expect(properties.nextCursor.type).toEqual(["string", "null"]);
  });

  test("what adds something asks for a key, JSON or a file, and can be refused as a reader", () => {
    for (const { post } of Object.values<{ post?: Record<string, never> }>(paths).filter((one) => one.post)) {
      const { parameters, requestBody, responses } = post as never as Record<string, never>;
      expect(parameters).toContainEqual(expect.objectContaining({ name: "Idempotency-Key", required: true }));
      expect(requestBody).toMatchObject({ required: true });
      expect(responses).toHaveProperty("403");
    }
    const body = paths["/callbacks"].post.requestBody.content["application/json"].schema;
    expect(body.required.toSorted()).toEqual(["complaint", "jobId", "kind", "reportedOn"]);
    expect(body.additionalProperties).toBe(false);
  });

  test("tells of every event that can be picked, and of its signature", () => {
    expect(Object.keys(document.webhooks)).toEqual(WEBHOOK_EVENT_KEYS);
    // biome-ignore lint/suspicious/noExplicitAny: read as a stranger would
    for (const { post } of Object.values<any>(document.webhooks)) {
      expect(post.parameters).toContainEqual(expect.objectContaining({ name: "Dewledger-Signature" }));
      const { required } = post.requestBody.content["application/json"].schema;
      expect(required).toEqual(["id", "event", "createdAt", "data"]);
    }
  });

  test("every reference in it leads somewhere", () => {
    const text = JSON.stringify(document);
    for (const [, name] of text.matchAll(/"#\/components\/responses\/(\w+)"/g))
      expect(document.components.responses).toHaveProperty(name ?? "");
    expect(text).not.toContain("$defs");
  });
});

describe("the description for people", () => {
  test("tells of what stands inside lists and maps", () => {
    const ledger = API_ENDPOINTS.find(({ name }) => name === "api read ledger");
    if (!ledger) throw new Error("The ledger is gone.");
    const { answer, curl } = endpointReference(ledger, "https://office.example");
    expect(answer.map(({ name }) => name)).toEqual(
      expect.arrayContaining(["lines[].unit", "lines[].cells.*.uncertainty", "lines[].bases[].source"]),
    );
    expect(curl).toBe(
      'curl "https://office.example/api/v1/jobs/$JOB_ID/ledger" \\\n  -H "Authorization: Bearer $DEWLEDGER_TOKEN"',
    );
  });

  test("says of everything what it is made of", () => {
    for (const endpoint of API_ENDPOINTS) {
      const { asked, body, answer } = endpointReference(endpoint, "");
      for (const { name, type } of [...asked, ...body, ...answer])
        expect(type, `${endpoint.name} ${name}`).toMatch(
          /^(((text|UUID|(whole )?number|true or false|list|object|null|day, \S+|instant, \S+)( or |$))|one of )/,
        );
    }
  });
});
