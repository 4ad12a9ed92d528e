import { z } from "zod";

const schema = z.object({
  NODE_ENV: z.enum(["development", "production", "test"]).default("development"),
  DATABASE_URL: z.url({ protocol: /^postgres(ql)?$/ }),
  /** Signs sessions and one-time links. The demo makes one and keeps it in its data folder. */
  NEXTAUTH_SECRET: z.string().min(32),
  NEXTAUTH_URL: z.url().default("http://localhost:3000"),
  /** Proxies of our own in front of this process; each adds one address to `x-forwarded-for`. */
  TRUSTED_PROXIES: z.coerce.number().int().min(0).max(10).default(0),
  /** Where uploaded files and the mail outbox live. */
  DATA_DIR: z.string().min(1).default(".data"),
  SMTP_URL: z.url().optional(),
  MAIL_FROM: z.string().default("Dewledger <no-reply@localhost>"),
  /** `off` for a process that only answers requests, while another does the background work. */
  WORKER: z.enum(["on", "off"]).default("on"),
  LOG_LEVEL: z.enum(["fatal", "error", "warn", "info", "debug", "silent"]).default("info"),
});

export type Env = z.infer<typeof schema>;

let read: Env | null = null;

/**
 * The settings of this process, checked at first use so that a build needs none of them.
 *
 * @throws Error naming every variable that is missing or wrong, and what it should be.
 */
export function env(): Env {
  if (read) return read;
  const parsed = schema.safeParse(process.env);
  if (!parsed.success) {
    const lines = parsed.error.issues.map((issue) => `${issue.path.join(".")}: ${issue.message}`);
    throw new Error(`Settings of this process are missing or wrong.\n${lines.join("\n")}`);
  }
  read = parsed.data;
  return read;
}
