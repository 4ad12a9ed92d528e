import type { Finding } from "../findings";
import type { LogAnalysis } from "./analyze-log";
import { humidityFindings } from "./humidity-findings";
import { type LogLimits, requireLogLimits } from "./judged";
import { loadFindings } from "./load-findings";
import { runningFindings } from "./running-findings";
import { sensorFindings } from "./sensor-findings";

/**
 * What the log amounts to, against the company's limits.
 *
 * @param analysis - From `analyzeLog`.
 * @param limits - Limits in force; ranges at `logsLimits`.
 * @returns One finding a question; "not measured" names the columns the log lacks, "can't tell" a log too short.
 * @throws {@link OutOfRangeError} for a limit outside its range.
 * @see Limits: common practice, no source. The humidity limit is the job's (EPA: below 60 %, ideally 30 to 50 %; published).
 */
export function logFindings(analysis: LogAnalysis, limits: LogLimits): readonly Finding[] {
  requireLogLimits(limits);
  return [
    ...humidityFindings(analysis, limits),
    ...runningFindings(analysis, limits),
    ...sensorFindings(analysis, limits),
    ...loadFindings(analysis, limits),
  ];
}
