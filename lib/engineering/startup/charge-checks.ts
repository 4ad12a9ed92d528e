import { moistAir, standardPressurePsia } from "@/lib/engineering/air";
import { numberText } from "@/lib/engineering/airflow";
import {
  absolutePressurePsia,
  type ChargeReadings,
  chargeFindings,
  type Refrigerant,
  refrigerantRules,
  saturationTempUncertaintyF,
  subcoolingF,
  superheatF,
} from "@/lib/engineering/refrigerant";
import { type Finding, finding, type Rule } from "../findings";
import { judge, type Result, whatWouldSettle } from "./judged";
import { prepareReadings } from "./propagate";
import type { ReadingName } from "./readings";
import { fieldNames, guarded, type StageCheck } from "./stage-check";
import { COVERAGE_FACTOR, type UncertainInput, withUncertainty } from "./with-uncertainty";

const SUPERHEAT_READINGS = ["suctionPressurePsig", "suctionLineF"] as const;
const SUBCOOLING_READINGS = ["liquidPressurePsig", "liquidLineF"] as const;

/**
 * Steady running, superheat and subcooling of one stage: targets and words from the refrigerant folder,
 * uncertainty from the instruments. In heating only what the maker gives a target for is judged.
 */
export function chargeChecks(check: StageCheck): readonly Finding[] {
  const { values } = check;
  const cooling = values.mode === "cooling";
  const side = (
    rule: Rule,
    names: readonly string[],
    off: Partial<ChargeReadings>,
    result: () => Result | null,
  ) =>
    guarded(check, rule, names, () => {
      const said = result();
      const uncertainties = instrumentUncertainties(rule, said);
      const all = chargeFindings({ ...chargeReadings(check), ...uncertainties, ...off }, check.limits);
      return withAccuracy(check, pick(all, rule), said);
    });
  const empty = { ...chargeReadings(check), suctionPressurePsig: null, liquidPressurePsig: null };
  const steady = staged(check, pick(chargeFindings(empty, check.limits), refrigerantRules.stabilized));
  const superheat = () =>
    side(refrigerantRules.superheat, SUPERHEAT_READINGS, { liquidPressurePsig: null }, () =>
      superheatResult(check),
    );
  const subcooling = () =>
    side(refrigerantRules.subcooling, SUBCOOLING_READINGS, { suctionPressurePsig: null }, () =>
      subcoolingResult(check),
    );
  return [
    steady,
    ...(cooling || values.makerSuperheatF !== null ? [superheat()] : []),
    ...(cooling || values.makerSubcoolingF !== null ? [subcooling()] : []),
  ];
}

function chargeReadings(check: StageCheck): ChargeReadings {
  const { values, site } = check;
  const { readings } = values;
  return {
    refrigerant: site.refrigerant,
    meteringDevice: site.meteringDevice,
    sitePressurePsia: site.elevationFt === null ? null : standardPressurePsia(site.elevationFt),
    suctionPressurePsig: readings.suctionPressurePsig?.value ?? null,
    suctionLineF: readings.suctionLineF?.value ?? null,
    liquidPressurePsig: readings.liquidPressurePsig?.value ?? null,
    liquidLineF: readings.liquidLineF?.value ?? null,
    indoorWetBulbF: returnWetBulbF(check),
    outdoorDryBulbF: readings.outdoorDryBulbF?.value ?? null,
    makerSuperheatF: values.makerSuperheatF,
    makerSubcoolingF: values.makerSubcoolingF,
    steadyMinutes: values.steadyMinutes,
    superheatUncertaintyF: null,
    subcoolingUncertaintyF: null,
  };
}

function returnWetBulbF({ values, site }: StageCheck): number | null {
  const {
    returnWetBulbF: wetBulb,
    returnRelativeHumidityPct: humidity,
    returnDryBulbF: dryBulb,
  } = values.readings;
  if (wetBulb !== null) return wetBulb.value;
  if (humidity === null || dryBulb === null || site.elevationFt === null) return null;
  return moistAir({
    dryBulbF: dryBulb.value,
    relativeHumidityPct: humidity.value,
    pressurePsia: standardPressurePsia(site.elevationFt),
  }).wetBulbF;
}

/** Expanded uncertainty of gauge and probe alone; the refrigerant folder adds that of its tables. */
function instrumentUncertainties(
  rule: Rule,
  said: Result | null,
): Pick<ChargeReadings, "superheatUncertaintyF" | "subcoolingUncertaintyF"> {
  const table = said?.result.budget.find((line) => line.input === TABLE);
  const known = said !== null && said.unknownAccuracy.length === 0;
  const expanded = known ? COVERAGE_FACTOR * (table?.withoutIt ?? said.result.standardUncertainty) : null;
  return rule === refrigerantRules.superheat
    ? { superheatUncertaintyF: expanded, subcoolingUncertaintyF: null }
    : { superheatUncertaintyF: null, subcoolingUncertaintyF: expanded };
}

/** The saturation table as one more input: an offset of 0 °F with its own uncertainty. */
const TABLE = "saturationTable";
function tableInput(refrigerant: Refrigerant, pressurePsia: number, side: "dew" | "bubble"): UncertainInput {
  return {
    value: 0,
    standardUncertainty: saturationTempUncertaintyF(refrigerant, pressurePsia, side) / COVERAGE_FACTOR,
    instrumentId: null,
  };
}

function superheatResult(check: StageCheck): Result | null {
  return chargeResult(check, SUPERHEAT_READINGS, "dew", (place, suctionPressurePsig, suctionLineF) =>
    superheatF({ ...place, suctionPressurePsig, suctionLineF }),
  );
}

function subcoolingResult(check: StageCheck): Result | null {
  return chargeResult(check, SUBCOOLING_READINGS, "bubble", (place, liquidPressurePsig, liquidLineF) =>
    subcoolingF({ ...place, liquidPressurePsig, liquidLineF }),
  );
}

/** Superheat or subcooling with its uncertainty from gauge, probe and saturation table; `null` while something is missing. */
function chargeResult(
  { values, site, limits }: StageCheck,
  names: typeof SUPERHEAT_READINGS | typeof SUBCOOLING_READINGS,
  side: "dew" | "bubble",
  evaluate: (
    place: { readonly refrigerant: Refrigerant; readonly sitePressurePsia: number },
    pressurePsig: number,
    lineF: number,
  ) => number,
): Result | null {
  const { refrigerant, elevationFt } = site;
  const [pressureName, lineName] = names;
  const { [pressureName]: pressure, [lineName]: line } = values.readings;
  if (refrigerant === null || elevationFt === null || pressure === null || line === null) return null;
  const place = { refrigerant, sitePressurePsia: standardPressurePsia(elevationFt) };
  // First, because its refusal of a pressure beyond the table names the reading.
  evaluate(place, pressure.value, line.value);
  const absolute = absolutePressurePsia(pressure.value, place.sitePressurePsia);
  const { inputs, unknownAccuracy } = prepareReadings<ReadingName>(
    values.readings,
    names,
    limits["startup.systematicShare"],
  );
  const result = withUncertainty(
    (at: Readonly<Partial<Record<string, number>>>) =>
      evaluate(place, at[pressureName] ?? Number.NaN, at[lineName] ?? Number.NaN) + (at[TABLE] ?? Number.NaN),
    { ...inputs, [TABLE]: tableInput(refrigerant, absolute, side) },
  );
  return { result, unknownAccuracy };
}

/** Names the reading that would decide, and withholds the verdict near a limit when an accuracy is not known. */
function withAccuracy(check: StageCheck, said: Finding, result: Result | null): Finding {
  const target = said.figures.find((figure) => figure.label === "target")?.value;
  const steady = (check.values.steadyMinutes ?? 0) >= check.limits["refrigerant.stabilizeMinutes"];
  if (result === null || target === undefined || !steady) return staged(check, said);
  const tolerance =
    said.ruleId === refrigerantRules.superheat.id
      ? check.limits["refrigerant.superheatTolerance"]
      : check.limits["refrigerant.subcoolingTolerance"];
  const range = { min: target - tolerance, max: target + tolerance };
  const verdict = judge(result, range, check.limits["startup.unknownAccuracyBand"]);
  const band =
    verdict === said.verdict || verdict !== "can't tell"
      ? ""
      : ` Within ${numberText(check.limits["startup.unknownAccuracyBand"], 0)} % of the limit an instrument of unknown accuracy cannot tell.`;
  return staged(check, {
    ...said,
    verdict,
    statement: `${said.statement}${band}`,
    nextStep: verdict === "can't tell" ? whatWouldSettle(result, range) : said.nextStep,
  });
}

function staged(check: StageCheck, said: Finding): Finding {
  return {
    ...said,
    statement:
      said.verdict === "not measured" && said.figures.length === 0
        ? said.statement
        : `${check.values.stage}: ${said.statement}`,
    inputs: fieldNames(check, said.inputs),
  };
}

function pick(findings: readonly Finding[], rule: Rule): Finding {
  return (
    findings.find((candidate) => candidate.ruleId === rule.id) ??
    finding(rule, { verdict: "not measured", statement: "This check gave no result." })
  );
}
