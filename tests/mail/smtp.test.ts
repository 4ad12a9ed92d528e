import { createServer, type Server, type Socket } from "node:net";
import { afterAll, afterEach, beforeAll, expect, test, vi } from "vitest";
import { sendMail } from "@/lib/mail/send-mail";
import { closeSmtp } from "@/lib/mail/smtp";

/** Speaks just enough of RFC 5321 to take a mail, or to refuse its recipient. */
let server: Server;
const received: string[] = [];
let refuseRecipient = false;

function talk(socket: Socket): void {
  let body: string[] | null = null;
  let rest = "";
  const say = (line: string) => socket.write(`${line}\r\n`);
  say("220 test");
  socket.on("data", (chunk) => {
    rest += chunk.toString("utf8");
    const lines = rest.split("\r\n");
    rest = lines.pop() ?? "";
    for (const line of lines) {
      if (body !== null) {
        if (line !== ".") body.push(line);
        else {
          received.push(body.join("\n"));
          body = null;
          say("250 taken");
        }
      } else if (/^RCPT/i.test(line)) say(refuseRecipient ? "550 no such person" : "250 ok");
      else if (/^DATA/i.test(line)) {
        body = [];
        say("354 go on");
      } else say("250 ok");
    }
  });
  socket.on("error", () => socket.destroy());
}

beforeAll(async () => {
  server = createServer(talk);
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("no port");
  vi.stubEnv("DATABASE_URL", "postgresql://localhost/none");
  vi.stubEnv("NEXTAUTH_SECRET", "x".repeat(32));
  vi.stubEnv("SMTP_URL", `smtp://127.0.0.1:${address.port}`);
});
afterEach(() => closeSmtp());
afterAll(async () => {
  vi.unstubAllEnvs();
  await new Promise((closed) => server.close(closed));
});

test("a mail is handed to the server named in the settings", async () => {
  const sent = await sendMail({ to: "a@example.com", subject: "Hello", text: "Forty-two" });
  expect(sent.via).toBe("smtp");
  expect(received).toHaveLength(1);
  expect(received[0]).toContain("Subject: Hello");
  expect(received[0]).toContain("Forty-two");
});

test("a refusal is an error that says to try again, and keeps the cause", async () => {
  refuseRecipient = true;
  const attempt = sendMail({ to: "nobody@example.com", subject: "Hello", text: "x" });
  await expect(attempt).rejects.toMatchObject({ code: "UNAVAILABLE" });
  await expect(attempt).rejects.toHaveProperty("cause.responseCode", 550);
});
