import { type Finding, finding, notMeasured, type Verdict } from "../findings";
import { textBeside } from "../limit-text";
import type { LogAnalysis } from "./analyze-log";
import { figure, type LogLimits } from "./judged";
import type { LoadLine } from "./load-line";
import type { AtDesign, PeakHour } from "./peak-hour";
import { logsRules } from "./rules";

/** With more days than this at full running the log shows only what was delivered, not what was wanted. */
const MOST_FULL_SHARE = 0.1;

/** The measured load of the peak hour against capacity and load summary. */
export function loadFindings({ loadLine }: LogAnalysis, limits: LogLimits): readonly Finding[] {
  if (loadLine?.peakHour == null || loadLine.atDesign === null) {
    return [logsRules.oversize, logsRules.loadSummary].map((rule) =>
      notMeasured(
        rule,
        ["firstStageShare", "outdoorF", "deliveredSensibleBtuhByStage", "design"],
        "Import at least 8 days of cooling over 8 °F of outdoor temperature, near the design temperature, with startup's delivered capacity.",
      ),
    );
  }
  const seen = { line: loadLine, peak: loadLine.peakHour, at: loadLine.atDesign };
  return [oversize(seen, limits), againstSummary(seen, limits)];
}

type Seen = { readonly line: LoadLine; readonly peak: PeakHour; readonly at: AtDesign };

function oversize({ line, peak, at }: Seen, limits: LogLimits): Finding {
  const most = limits["logs.oversizeRatioMax"];
  const capacity = at.oversizeRatio * at.sensibleBtuh;
  const verdict = verdictOf({
    surelyGood: capacity <= most * at.low,
    couldBeGood: capacity <= most * at.high,
  });
  return finding(logsRules.oversize, {
    verdict,
    statement: `Sensible capacity is ${atMost(peak)}${textBeside(at.oversizeRatio, [most], 2)} of the ${load(at)} the house takes ${when(peak, at)}; ${most.toFixed(2)} is the limit.`,
    figures: [
      figure("capacity over measured peak load", at.oversizeRatio, "ratio", 2),
      figure("zero-load outdoor temperature", line.zeroLoadF, "°F", 1),
      figure("running in the design day's peak hour", at.duty * 100, "%", 0),
    ],
    nextStep:
      verdict === "meets"
        ? null
        : verdict === "can't tell"
          ? UNSURE
          : "Lower the capacity setting, or the airflow of equipment whose capacity follows it.",
    caution: null,
    inputs: ["firstStageShare", "outdoorF"],
  });
}

function againstSummary({ peak, at }: Seen, limits: LogLimits): Finding {
  const most = limits["logs.loadSummaryApartMaxPct"];
  const summaryBtuh = at.sensibleBtuh / at.overLoadSummary;
  const apartPct = (at.overLoadSummary - 1) * 100;
  const [lowPct, highPct] = [at.low, at.high].map((btuh) => (btuh / summaryBtuh - 1) * 100) as [
    number,
    number,
  ];
  const isFull = peak.fullShare > MOST_FULL_SHARE;
  const verdict = verdictOf({
    // Running all the time, the house may have wanted any amount more.
    surelyGood: lowPct >= -most && highPct <= most && !isFull,
    couldBeGood: lowPct <= most && (highPct >= -most || isFull),
  });
  return finding(logsRules.loadSummary, {
    verdict,
    statement: `${when(peak, at, "On")} the house takes ${isFull ? "at least " : ""}${load(at)}, ${apartPct >= 0 ? "+" : "−"}${textBeside(Math.abs(apartPct), [most], 0)} % of the load summary's peak; ${most.toFixed(0)} % either way is to be expected.`,
    figures: [
      figure("measured against load summary", apartPct, "%", 0),
      figure("days the largest stage ran that hour through", 100 * peak.fullShare, "%", 0),
    ],
    nextStep:
      verdict === "meets"
        ? null
        : verdict === "can't tell"
          ? UNSURE
          : "Explain the difference: people, setpoint, leakage, ducts, safety factors, or a capacity that is no longer delivered.",
    caution: null,
    inputs: ["firstStageShare", "outdoorF"],
  });
}

const UNSURE = "Import a log with more hot days: the interval of this one reaches over the limit.";

/** Good when the whole interval is, bad when none of it is. */
function verdictOf(said: { readonly surelyGood: boolean; readonly couldBeGood: boolean }): Verdict {
  return said.surelyGood ? "meets" : said.couldBeGood ? "can't tell" : "falls short";
}

const whole = (value: number) => Math.round(value).toLocaleString("en-US");
const atMost = ({ fullShare }: PeakHour) => (fullShare > MOST_FULL_SHARE ? "at most " : "");
const load = ({ sensibleBtuh, low, high }: AtDesign) =>
  `${whole(sensibleBtuh)} Btu/h (95 %: ${whole(low)} to ${whole(high)})`;
const when = ({ hour, dayCount }: PeakHour, { beyondLogF }: AtDesign, on = "on") =>
  `${on} a day as hot as design, between ${hour}:00 and ${hour + 1}:00, by the log's ${dayCount} days${
    beyondLogF >= 0.5 ? ` (${beyondLogF.toFixed(0)} °F hotter than any of them)` : ""
  }`;
