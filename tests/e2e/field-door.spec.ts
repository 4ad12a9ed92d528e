import { spawn } from "node:child_process";
import path from "node:path";
import { expect, test } from "@playwright/test";

/** Runs a soak in a process of its own, shortened: it has its own database, and settings are read once a process. */
function soak(name: string, env: Readonly<Record<string, string>>) {
  return new Promise<{ readonly code: number | null; readonly said: string }>((resolve) => {
    const script = path.join(import.meta.dirname, "../soak", name);
    const child = spawn(process.execPath, ["--import", "tsx", script], { env: { ...process.env, ...env } });
    let said = "";
    for (const stream of [child.stdout, child.stderr])
      stream.on("data", (chunk) => {
        said += chunk;
      });
    child.once("close", (code) => resolve({ code, said }));
  });
}

// `npm run soak` does 200 rounds and 200 techs.
test("a connection that spoils three of four requests: each reading and photo arrives once", async () => {
  test.setTimeout(180_000);
  const { code, said } = await soak("field-faults.ts", { DEWLEDGER_ROUNDS: "60", DEWLEDGER_SEED: "7" });
  expect(said).toContain("60 rounds took");
  for (const fault of ["dropped after", "500 after", "answer cut", "upload cut", "twice"])
    expect(said).toContain(fault);
  expect(code, said).toBe(0);
});

test("20 techs at once: no error, nothing twice", async () => {
  test.setTimeout(180_000);
  const { code, said } = await soak("many-techs.ts", { DEWLEDGER_TECHS: "20", DEWLEDGER_BETWEEN_MS: "1000" });
  expect(said).toContain("20 techs");
  // One request a phone: its readings, whose answer says that nothing else is new.
  expect(said).toContain("signal back: 20 requests");
  expect(code, said).toBe(0);
});
