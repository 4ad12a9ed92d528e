import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { sendMail } from "@/lib/mail/send-mail";

let dataDir: string;

beforeAll(async () => {
  dataDir = await mkdtemp(join(tmpdir(), "mail-"));
  vi.stubEnv("DATABASE_URL", "postgresql://localhost/none");
  vi.stubEnv("NEXTAUTH_SECRET", "x".repeat(32));
  vi.stubEnv("DATA_DIR", dataDir);
  vi.stubEnv("MAIL_FROM", "Ledger <ledger@example.com>");
});
afterAll(async () => {
  vi.unstubAllEnvs();
  await rm(dataDir, { recursive: true });
});

const outbox = async () => (await readdir(join(dataDir, "outbox"))).toSorted();

test("a mail becomes one complete .eml file", async () => {
  const sent = await sendMail({
    to: "homeowner@example.com",
    replyTo: "office@example.com",
    subject: "Your packet, Łukasz",
    text: "Plain text.\n",
    attachments: [
      { filename: "packet.pdf", contentType: "application/pdf", content: new Uint8Array([1, 2, 3]) },
    ],
  });
  if (sent.via !== "outbox") throw new Error("no SMTP server is set, so it must be the outbox");
  const text = await readFile(sent.file, "utf8");
  expect(text).toContain("From: Ledger <ledger@example.com>\r\n");
  expect(text).toContain("To: homeowner@example.com\r\n");
  expect(text).toContain("Reply-To: office@example.com\r\n");
  expect(text).toContain("Plain text.");
  expect(text).toContain("filename=packet.pdf");
  // 0x01 0x02 0x03 in base64.
  expect(text).toContain("AQID");
  expect(text).toContain(`Message-ID: ${sent.messageId}`);
  expect(await outbox()).toHaveLength(1);
});

test("names sort in the order of sending and nothing half-written is left", async () => {
  const files: string[] = [];
  for (let n = 0; n < 20; n += 1) {
    const sent = await sendMail({ to: "a@example.com", subject: `Mail ${n}`, text: "x" });
    if (sent.via === "outbox") files.push(sent.file.slice(join(dataDir, "outbox").length + 1));
  }
  expect(files.toSorted()).toEqual(files);
  expect((await outbox()).every((name) => /^\d{8}T\d{9}Z-\d{6}-[0-9a-f]{8}\.eml$/.test(name))).toBe(true);
  expect(await outbox()).toHaveLength(21);
});

test.each([
  ["to", { to: "a@example.com, b@example.com" }],
  ["to", { to: "a@example.com\r\nBcc: b@example.com" }],
  ["to", { to: "" }],
  ["replyTo", { replyTo: "not an address" }],
  ["subject", { subject: "One\r\nBcc: b@example.com" }],
  ["subject", { subject: " " }],
])("refuses a wrong %s and writes nothing", async (field, wrong) => {
  const before = await outbox();
  const message = { to: "a@example.com", subject: "Hello", text: "x", ...wrong };
  await expect(sendMail(message)).rejects.toMatchObject({ code: "INVALID_INPUT", fields: [{ field }] });
  expect(await outbox()).toEqual(before);
});
