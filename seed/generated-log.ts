import { readFile } from "node:fs/promises";
import path from "node:path";
import type { JobId } from "@/lib/domain/ids";
import { parseEpw } from "@/lib/engineering/weather";
import type { LogMapping } from "@/lib/schemas/log-file";
import { importLog } from "@/lib/services/import-log";
import { GENERATED_LOG_HEADINGS, generatedLog, type LoggedHouse } from "./house-log";
import type { Actor, DemoWorld } from "./world";

const [time, indoor, indoorRh, outdoor, outdoorRh, setpoint, first, second, fan] = GENERATED_LOG_HEADINGS;

const MAPPING: LogMapping = {
  version: 1,
  timeHeading: time,
  timeOfDayHeading: null,
  dateOrder: null,
  columns: [
    { heading: indoor, channel: "indoorF", unit: "°F" },
    { heading: indoorRh, channel: "indoorRhPct", unit: "%" },
    { heading: outdoor, channel: "outdoorF", unit: "°F" },
    { heading: outdoorRh, channel: "outdoorRhPct", unit: "%" },
    { heading: setpoint, channel: "setpointF", unit: "°F" },
    { heading: first, channel: "firstStageShare", unit: "seconds" },
    { heading: second, channel: "secondStageShare", unit: "seconds" },
    { heading: fan, channel: "fanShare", unit: "seconds" },
  ],
  onlyWhere: null,
};

/** Imports two generated weeks of an invented house and answers the import's id. */
export async function importGeneratedLog(
  world: DemoWorld,
  jobId: JobId,
  by: Actor,
  house: LoggedHouse,
): Promise<string> {
  const epw = await readFile(path.join(import.meta.dirname, "weather/houston-2a.epw"), "utf8");
  const { firstDay, stages } = house;
  return importInventedLog(world, jobId, by, {
    csv: generatedLog(house, parseEpw(epw)),
    firstDay,
    stages: stages.length,
  });
}

/** Imports an invented log and answers the import's id. */
export async function importInventedLog(
  world: DemoWorld,
  jobId: JobId,
  by: Actor,
  log: { readonly csv: string; readonly firstDay: string; readonly stages: number },
): Promise<string> {
  // A one-stage house has no second-stage column in its story; its zeros say nothing.
  const columns = MAPPING.columns.filter(({ channel }) => log.stages === 2 || channel !== "secondStageShare");
  const { importId } = await importLog(world.scopes[by], {
    jobId,
    fileName: `invented-log-${log.firstDay}.csv`,
    bytes: new TextEncoder().encode(log.csv),
    sourceName: log.stages === 2 ? "Invented logger, two stages (demo)" : "Invented logger, one stage (demo)",
    mapping: { ...MAPPING, columns },
  });
  return importId;
}
