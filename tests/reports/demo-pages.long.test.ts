import { rm } from "node:fs/promises";
import path from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { TenantScope } from "@/lib/domain/scope";
import { loadFonts } from "@/lib/reports/fonts";
import { drawPdf, layOut } from "@/lib/reports/render-pdf";
import { documentOf } from "@/lib/reports/render-view";
import type { PacketParts } from "@/lib/services/packet-views/parts";
import { type EmbeddedServer, startEmbedded } from "@/prisma/embedded";
import { migrate } from "@/prisma/migrate";
import {
  type DemoPacket,
  demoJobs,
  demoPackets,
  demoScopes,
  keepDemoForecasts,
} from "../support/demo-packets";
import { makeServerFolder } from "../support/own-server";
import { strayQuantities } from "./packet-numbers";
import { faultsOfPages, pictureFaults } from "./page-faults";
import { orderFaults, overlaps, readPdf } from "./read-pdf";

/**
 * Every packet of every job of the demo. Jobs take letter and A4 by turns, and one page in nine of each third job
 * is looked at as a picture, so that it ends in a minute and a half; `DEWLEDGER_ALL_PAGES=1` takes both papers and every page.
 */
const ALL = process.env.DEWLEDGER_ALL_PAGES === "1";
const PAPERS = ["letter", "a4"] as const;
const EVERY = ALL ? 1 : 9;

let folder: string;
let server: EmbeddedServer;
let companies: readonly (readonly [string, TenantScope])[];

beforeAll(async () => {
  folder = await makeServerFolder();
  server = await startEmbedded({ folder, unsafeButFast: true });
  await migrate(server.url);
  Object.assign(process.env, {
    DATABASE_URL: server.url,
    DATA_DIR: path.join(folder, "files"),
    NEXTAUTH_SECRET: "a secret of the tests, of no use anywhere else",
  });
  const { seedDemo } = await import("@/seed/seed");
  await seedDemo();
  companies = await demoScopes();
  await keepDemoForecasts(companies.map(([, scope]) => scope));
  await loadFonts();
}, 300_000);
afterAll(async () => {
  const { closeDatabase } = await import("@/lib/db/client");
  await closeDatabase();
  await server.stop();
  await rm(folder, { recursive: true, force: true });
});

test("every packet of every job of both companies is sound on every page, and every number is accounted for", async () => {
  const faults: string[] = [];
  const seen = { packets: 0, pages: 0, forecasts: 0 };
  for (const [company, scope] of companies) {
    for (const [at, { id }] of (await demoJobs(scope)).entries()) {
      for (const paper of ALL ? PAPERS : [PAPERS[at % 2 === 0 ? 0 : 1]]) {
        for (const packet of await demoPackets(scope, id, paper ?? "letter")) {
          const { pages, found } = await faultsOf(packet, ALL || at % 3 === 0);
          seen.packets += 1;
          seen.pages += pages;
          seen.forecasts += packet.parts.context.forecast === null ? 0 : 1;
          faults.push(...found.map((fault) => `${company}, ${packet.name}: ${fault}`));
        }
      }
    }
  }
  expect(faults).toEqual([]);
  expect(seen.packets).toBeGreaterThan(100);
  expect(seen.pages).toBeGreaterThan(500);
  expect(seen.forecasts).toBeGreaterThan(0);
}, 900_000);

async function faultsOf({ view, parts, name }: DemoPacket, asPictures: boolean) {
  const document = await documentOf(view);
  const laidOut = await layOut(document);
  const layout = faultsOfPages(laidOut);
  const bytes = await drawPdf(document.props, laidOut);
  const read = await readPdf(bytes);
  const pictures = asPictures ? await pictureFaults(bytes, EVERY) : [];
  const { pages, fonts, info, outline, isTagged, unread } = read;
  return {
    pages: pages.length,
    found: [
      ...layout,
      ...pictures,
      ...pages.flatMap(overlaps),
      ...read.order.flatMap(orderFaults),
      ...pages.flatMap((page, at) =>
        new RegExp(`(?:Page|Página) ${at + 1} (?:of|de) ${pages.length}`).test(page.text)
          ? []
          : [`page ${at + 1} does not say which of how many it is`],
      ),
      ...fonts.filter((font) => !font.isEmbedded).map((font) => `${font.name} is not embedded`),
      ...(String(info.Title ?? "").includes(parts.job.customer.name) ? [] : ["no title"]),
      ...(info.Language === (name.includes("-es-") ? "es-US" : "en-US") ? [] : ["no language"]),
      ...(outline.length > 3 ? [] : ["no outline"]),
      ...(isTagged && unread.length === 0 ? [] : [`text outside the structure: ${unread.join(", ")}`]),
      ...(name.includes("-es-") ? englishIn(read.text, parts) : []),
      ...strayQuantities(read.text, parts).map((one) => `${one} stands in no record`),
    ],
  };
}

const ENGLISH =
  /\b(?:the|of|with|without|not|at least|at most|measured|given|recorded|logged|hours?|house|time|cooling|airflow|humidity|warranty|startup|setting|meets|falls)\b/gi;

/** English words in a Spanish packet, beside names and what the company wrote itself. */
function englishIn(text: string, { brand, job, context, log }: PacketParts): readonly string[] {
  const own = [
    brand.companyName,
    brand.licenceLine,
    ...brand.contactLines,
    job.customer.name,
    job.home.addressLine,
    context.model?.name ?? "",
    ...log.imports.map(({ sourceName }) => sourceName),
  ];
  const rest = own.filter((words) => words !== "").reduce((left, words) => left.replaceAll(words, ""), text);
  return [...new Set(rest.match(ENGLISH) ?? [])].map((word) => `“${word}” is English`);
}
