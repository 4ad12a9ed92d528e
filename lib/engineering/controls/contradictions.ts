import { exp } from "../exact-functions";
import { type Finding, finding, notMeasured, type Rule } from "../findings";
import { type HouseAfternoon, loadAtSetpointBtuh, loadSlopeBtuhPerF } from "./afternoon";
import type { ControlFindingsInput } from "./input";
import { controlsRules } from "./rules";

type Said = {
  readonly rule: Rule;
  readonly words: string;
  readonly fix: string;
  readonly fields: readonly string[];
};

/** Settings, wiring and house that cannot be right together: one finding each, or the word that none was found. */
export function contradictionFindings(input: ControlFindingsInput): readonly Finding[] {
  const found = [...settingsAgainstEachOther(input), ...wiring(input), ...board(input), ...house(input)];
  if (found.length > 0) {
    return found.map(({ rule, words, fix, fields }) =>
      finding(rule, { verdict: "falls short", statement: words, nextStep: fix, inputs: fields }),
    );
  }
  const missing = missingFields(input);
  if (missing.length > 0) {
    return [notMeasured(controlsRules.consistent, missing, "Enter the rest; what is entered so far agrees.")];
  }
  return [
    finding(controlsRules.consistent, {
      verdict: "meets",
      statement: "Settings, wiring and house agree with each other.",
    }),
  ];
}

function settingsAgainstEachOther({ settings, equipmentStages }: ControlFindingsInput): readonly Said[] {
  const found: Said[] = [];
  const { firstStageStartOffsetF: first, secondStageStartOffsetF: second } = settings;
  if (equipmentStages !== 1 && first !== null && second !== null && second < first) {
    found.push({
      rule: controlsRules.secondBelowFirst,
      words: `The second stage would start ${second.toFixed(1)} °F above setpoint, before the first at ${first.toFixed(1)} °F.`,
      fix: "Raise the second-stage start offset above the first.",
      fields: ["secondStageStartOffsetF", "firstStageStartOffsetF"],
    });
  }
  const { fanBetweenCalls: mode, fanBetweenCallsMinPerH: minutes } = settings;
  if (mode !== null && mode !== "minutes per hour" && minutes !== null) {
    found.push({
      rule: controlsRules.fanMinutes,
      words: `The fan between calls is "${mode}", yet ${minutes.toFixed(0)} minutes an hour are entered.`,
      fix: "Clear the minutes, or set the fan to minutes per hour.",
      fields: ["fanBetweenCalls", "fanBetweenCallsMinPerH"],
    });
  }
  if (settings.fanRunOnAfterCoolingS === 0 && mode !== null && mode !== "off") {
    found.push({
      rule: controlsRules.fanOverWetCoil,
      words:
        "The fan stops with the compressor to keep water on the coil, but fan between calls then blows over the wet coil all the same.",
      fix: "Turn the fan off between calls, or accept the water it gives back.",
      fields: ["fanRunOnAfterCoolingS", "fanBetweenCalls"],
    });
  }
  return found;
}

function wiring(input: ControlFindingsInput): readonly Said[] {
  const found: Said[] = [];
  const { equipmentStages: stages, coolingStagesWired: wired, fanStages, fanStagesWired } = input;
  if (stages === 2 && wired === 1) {
    found.push({
      rule: controlsRules.stageNotWired,
      words: "The equipment has two cooling stages but one is wired, so a stage never runs as set.",
      fix: "Wire the second stage, or set the board to stage by itself and record that.",
      fields: ["equipmentStages", "coolingStagesWired"],
    });
  }
  if (stages === 1 && wired === 2) {
    found.push({
      rule: controlsRules.stageWiredToNothing,
      words: "Two cooling stages are wired, but the equipment has one.",
      fix: "Correct the wiring or the equipment entered.",
      fields: ["equipmentStages", "coolingStagesWired"],
    });
  }
  if (fanStages === 2 && fanStagesWired === 1) {
    found.push({
      rule: controlsRules.fanNotWired,
      words:
        "The fan has two stages but is wired for one, so one compressor stage runs with the other's airflow.",
      fix: "Wire the fan's second stage.",
      fields: ["fanStages", "fanStagesWired"],
    });
  }
  return found;
}

function board({ board, settings, equipmentStages }: ControlFindingsInput): readonly Said[] {
  const found: Said[] = [];
  const airflow = board.airflowSettingCfmByStage;
  const [first, second] = airflow ?? [];
  if (first !== undefined && second !== undefined && second < first) {
    found.push({
      rule: controlsRules.airflowOrder,
      words: `The second stage is set to ${second.toFixed(0)} cfm, below the first stage's ${first.toFixed(0)} cfm.`,
      fix: "Exchange the two airflow settings, or correct the one mistyped.",
      fields: ["airflowSettingCfmByStage"],
    });
  }
  if (airflow !== null && equipmentStages !== null && airflow.length !== equipmentStages) {
    found.push({
      rule: controlsRules.airflowCount,
      words: `${airflow.length} airflow ${airflow.length === 1 ? "setting is" : "settings are"} entered for ${equipmentStages} cooling ${equipmentStages === 1 ? "stage" : "stages"}.`,
      fix: "Enter one airflow setting for each cooling stage.",
      fields: ["airflowSettingCfmByStage", "equipmentStages"],
    });
  }
  if (board.colderCoilCooling === true && (settings.fanRunOnAfterCoolingS ?? 0) > 0) {
    found.push({
      rule: controlsRules.coldCoilRunOn,
      words: `Colder-coil cooling wrings out more water, and ${(settings.fanRunOnAfterCoolingS ?? 0).toFixed(0)} s of fan run-on give part of it back.`,
      fix: "Set the fan run-on after cooling to 0 s.",
      fields: ["colderCoilCooling", "fanRunOnAfterCoolingS"],
    });
  }
  return found;
}

function house({ house, settings, limits }: ControlFindingsInput): readonly Said[] {
  if (house === null) return [];
  const found: Said[] = [];
  const { firstStageStartOffsetF: first, secondStageStartOffsetF: second } = settings;
  const { minimumCompressorRunMin: run, minimumCompressorRestMin: rest } = settings;
  const past = settings.coolingPastSetpointF;
  if (first !== null && run !== null && past !== null) {
    const end = roomAfter(house, house.partLoadOutdoorF, first, house.stages[0]?.sensibleBtuh ?? 0, run);
    const below = -past - end;
    const allowed = limits["controls.overshootMaxF"];
    if (below > allowed) {
      found.push({
        rule: controlsRules.runOvershoots,
        words: `At part load the first stage reaches the end of a call before its ${run.toFixed(0)} min are over and leaves the room ${below.toFixed(1)} °F below it; ${allowed.toFixed(1)} °F is allowed.`,
        fix: "Shorten the minimum compressor run, start later, or choose a smaller capacity setting.",
        fields: ["minimumCompressorRunMin", "firstStageStartOffsetF"],
      });
    }
  }
  if (house.stages.length === 2 && rest !== null && second !== null && past !== null) {
    const peak = roomAfter(house, house.designOutdoorF, -past, 0, rest);
    if (peak >= second) {
      found.push({
        rule: controlsRules.restForcesSecondStage,
        words: `At design the room climbs to ${peak.toFixed(1)} °F above setpoint within the ${rest.toFixed(0)} min of rest, so every call begins in the second stage.`,
        fix: "Shorten the minimum compressor rest or raise the second-stage start offset.",
        fields: ["minimumCompressorRestMin", "secondStageStartOffsetF"],
      });
    }
  }
  return found;
}

/** Room minus setpoint after some minutes at a steady outdoor temperature and capacity, closed form, °F. */
function roomAfter(house: HouseAfternoon, outdoorF: number, fromF: number, removedBtuh: number, min: number) {
  const slope = loadSlopeBtuhPerF(house);
  const surplus = loadAtSetpointBtuh(house, outdoorF) - removedBtuh;
  const hours = min / 60;
  if (slope === 0) return fromF + (surplus * hours) / house.capacitanceBtuPerF;
  const settled = surplus / slope;
  return settled + (fromF - settled) * exp((-slope * hours) / house.capacitanceBtuPerF);
}

function missingFields(input: ControlFindingsInput): readonly string[] {
  const { fanBetweenCallsMinPerH: _, ...settings } = input.settings;
  const { settings: _s, limits: _l, board, ...rest } = input;
  const entries = Object.entries({ ...settings, ...board, ...rest });
  return entries
    .filter(
      ([name, value]) =>
        value === null &&
        !["temperatureReadings", "humidityReadings", "selectedCapacityTons", "coil"].includes(name),
    )
    .map(([name]) => name);
}
