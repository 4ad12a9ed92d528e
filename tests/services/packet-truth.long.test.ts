import { describe, expect, test } from "vitest";
import type { JobContext } from "@/lib/domain/evaluate";
import type { Block, SheetView } from "@/lib/reports/sheet/view";
import { homeownerPacketView } from "@/lib/services/homeowner-packet-view";
import { crewPacketView } from "@/lib/services/packet-views/crew";
import { filePacketView } from "@/lib/services/packet-views/file";
import { reviewPacketView } from "@/lib/services/packet-views/review";
import { FULL_JOB } from "../support/full-job";
import { packetPartsOf } from "../support/packet-parts";

/** What a packet says to a reader who has nothing but the paper. */

const model = FULL_JOB.model;
if (model === null) throw new Error("The full job has equipment.");
const oneStage: JobContext = { ...FULL_JOB, model: { ...model, compressorKind: "single_speed" } };

const tableOf = (view: SheetView, title: string) => {
  const blocks: readonly Block[] = view.sections.find((one) => one.title === title)?.blocks ?? [];
  return blocks.flatMap((block) => (block.kind === "table" ? block.rows : []));
};

/** A job that is selected and not set up: control and airflow setup are empty. */
function undecided(change: Partial<JobContext["inputs"]["airflow_setup"]> = {}): JobContext {
  const blank = <T extends object>(record: T) =>
    Object.fromEntries(Object.keys(record).map((key) => [key, null])) as T;
  const { inputs } = FULL_JOB;
  return {
    ...FULL_JOB,
    inputs: {
      ...inputs,
      airflow_setup: { ...blank(inputs.airflow_setup), ...change },
      control_setup: blank(inputs.control_setup),
    },
  };
}

describe("equipment with one stage", () => {
  test.each(["en", "es"] as const)("says nothing of stages to its homeowner (%s)", (language) => {
    const view = homeownerPacketView(packetPartsOf({}, [], oneStage), language, null);
    const said = JSON.stringify([view.howItIsSet, view.measured, view.ledger]);
    expect(said).not.toMatch(/first.stage|second.stage|gentle|primera etapa|segunda etapa|suave/i);
    const two = homeownerPacketView(packetPartsOf(), language, null);
    expect(JSON.stringify(two.howItIsSet)).toMatch(/first stage|primera etapa/i);
  });

  test("asks the crew for nothing its control does not have", () => {
    const view = crewPacketView(packetPartsOf({}, [], oneStage));
    const settings = tableOf(view, "Settings to make").map(([label]) => label);
    expect(settings).not.toContain("Second-stage start offset");
    expect(settings).not.toContain("Step back to first stage");
    const blanks = view.sections.flatMap(({ blocks }) => blocks).find((block) => block.kind === "blanks");
    expect(blanks).toMatchObject({ heads: ["Reading"] });
  });
});

test("the crew is told what is not decided, and to ask", () => {
  const view = crewPacketView(packetPartsOf({}, [], undecided()));
  const settings = new Map(tableOf(view, "Settings to make").map(([label, , to]) => [label, to]));
  expect(settings.get("Capacity setting")).not.toBe("not decided");
  expect(settings.get("Airflow setting, full capacity")).toBe("not decided");
  expect(settings.get("Fan between calls")).toBe("not decided");
  // What comes of readings at the house is nobody's to decide before.
  expect(settings.has("Indoor humidity correction")).toBe(false);
  expect(view.sections[0]?.lead).toContain("ask the office before starting");
});

test("without a design the static aims at the maker’s limit, not at nothing", () => {
  const row = (context: JobContext) =>
    tableOf(crewPacketView(packetPartsOf({}, [], context)), "Aim at").find(
      ([reading]) => reading === "External static pressure",
    );
  const limit = model.data.limits.maxExternalStaticInWc?.toFixed(2);
  expect(row(undecided())).toEqual([
    "External static pressure",
    `at most ${limit} in. w.c.`,
    "maker’s limit; no design yet",
  ]);
  expect(row(undecided({ designExternalStaticInWc: 0.5 }))?.[1]).toBe("0.38 to 0.63 in. w.c., aim 0.50");
});

test("a reason for departing is no setting", () => {
  const settings = tableOf(filePacketView(packetPartsOf()), "Settings as left").map(([label]) => label);
  expect(settings).toContain("Fan run-on after cooling");
  expect(settings).not.toContain("Reasons for departing from a limit");
});

test("the file says how a record stood when signed, and how it stands with the later ones", () => {
  const parts = packetPartsOf();
  const { equipment_selection: selection } = parts.records;
  if (selection === null) throw new Error("The selection is signed.");
  const view = filePacketView({
    ...parts,
    records: { ...parts.records, equipment_selection: { ...selection, verdict: "falls short" } },
  });
  const row = tableOf(view, "Where the job stands").find(([stage]) => stage === "Equipment selection");
  expect(row?.slice(-2)).toEqual(["falls short", parts.evaluation.verdicts.equipment_selection]);
});

test("the settings count as documented when they were recorded, not when one of them was", () => {
  const { startup_record: startup } = FULL_JOB.inputs;
  const said = (change: Partial<typeof startup>) => {
    const context = {
      ...FULL_JOB,
      inputs: { ...FULL_JOB.inputs, startup_record: { ...startup, ...change } },
    };
    const rows = tableOf(filePacketView(packetPartsOf({}, [], context)), "Appendix: where each thing is");
    return rows.find(([asked]) => asked === "Settings as left")?.at(-1);
  };
  const none = { leftCoolingSetpointF: null, leftFanRunOnAfterCoolingS: null, leftFanBetweenCalls: null };
  expect(said({ leftCapacitySetting: "2.5 tons", ...none })).toBe("in part, signed");
});

test("the homeowner’s ledger holds what was measured or logged, nothing that was only planned", () => {
  const parts = packetPartsOf();
  const { ledger } = homeownerPacketView(parts, "en", null);
  const printed = ledger.flatMap(({ lines }) => lines);
  const answered = parts.evaluation.ledger.filter(
    ({ key, cells }) =>
      cells.measured.value !== null || cells.lived.value !== null || key === "forecast-dry-hours",
  );
  expect(printed.map(({ label }) => label)).toEqual(answered.map(({ label }) => label));
  expect(answered.length).toBeLessThan(parts.evaluation.ledger.length);
});

test("a size is in the packet’s language", () => {
  const context = {
    ...FULL_JOB,
    inputs: {
      ...FULL_JOB.inputs,
      equipment_selection: { ...FULL_JOB.inputs.equipment_selection, capacitySetting: "2.5 tons" },
    },
  };
  const view = homeownerPacketView(packetPartsOf({}, [], context), "es", null);
  expect(view.installed.capacitySetting.text).toBe("2.5 toneladas");
});

test("a review ends in its findings: what was changed is not left to a page of its own", () => {
  expect(reviewPacketView(packetPartsOf()).sections.map(({ title }) => title)).toEqual([
    "What it comes to",
    "What the log shows",
    "Forecast against lived",
    "Designed against lived",
    "What was changed",
    "Findings",
  ]);
});

test.each(["en", "es"] as const)("a log of 36 hours keeps no promise on the cover (%s)", (language) => {
  const { log } = FULL_JOB;
  if (log === null) throw new Error("The full job has a log.");
  const verdictOf = (loggedHours: number) => {
    const context = { ...FULL_JOB, log: { ...log, loggedHours, dryHours: loggedHours, analysis: null } };
    return homeownerPacketView(packetPartsOf({}, [], context), language, null).lived?.figures[0]?.verdict;
  };
  expect(verdictOf(36)).toBe("can't tell");
  expect(verdictOf(336)).toBe("meets");
});
