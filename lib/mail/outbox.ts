import { randomBytes } from "node:crypto";
import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { createTransport, type SendMailOptions } from "nodemailer";
import writeFileAtomic from "write-file-atomic";
import type { SentMail } from "./message";

let writtenByThisProcess = 0;

/** Keeps a mail as one `.eml` file below `<dataDir>/outbox`, where any mail program opens it. */
export async function writeToOutbox(dataDir: string, options: SendMailOptions): Promise<SentMail> {
  const transport = createTransport({ streamTransport: true, buffer: true, newline: "windows" });
  const info = await transport.sendMail(options);
  if (!Buffer.isBuffer(info.message)) throw new Error("The mail was not built as bytes.");
  const folder = join(dataDir, "outbox");
  await mkdir(folder, { recursive: true });
  const file = join(folder, nextName());
  await writeFileAtomic(file, info.message, { mode: 0o600 });
  return { via: "outbox", messageId: info.messageId, file };
}

/** Sorts by time; the counter orders mails of one millisecond, the random end keeps two processes apart. */
function nextName(): string {
  writtenByThisProcess += 1;
  const time = new Date().toISOString().replaceAll(/[-:.]/g, "");
  const order = String(writtenByThisProcess).padStart(6, "0");
  return `${time}-${order}-${randomBytes(4).toString("hex")}.eml`;
}
