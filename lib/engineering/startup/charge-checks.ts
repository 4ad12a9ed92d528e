import { moistAir, standardPressurePsia } from "@/lib/engineering/air";
import { numberText } from "@/lib/engineering/airflow";
import { type ChargeReadings, chargeFindings, refrigerantRules } from "@/lib/engineering/refrigerant";
import type { Finding, Rule } from "../findings";
import { CHARGE_READINGS, type ChargeKind, chargeResult, instrumentUncertaintyF } from "./charge-result";
import { judge, type Result, whatWouldSettle } from "./judged";
import { fieldNames, guarded, isSteady, type StageCheck } from "./stage-check";

const NO_PRESSURES = { suctionPressurePsig: null, liquidPressurePsig: null } as const;

/**
 * Steady running, superheat and subcooling of one stage: targets and words from the refrigerant folder,
 * uncertainty from the instruments. In heating only what the maker gives a target for is judged.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function chargeChecks(check: StageCheck): readonly Finding[] {
  const { mode, makerSuperheatF, makerSubcoolingF } = check.values;
  const cooling = mode === "cooling";
  return [
    steadyFinding(check),
    ...(cooling || makerSuperheatF !== null ? [chargeFinding(check, "superheat")] : []),
    ...(cooling || makerSubcoolingF !== null ? [chargeFinding(check, "subcooling")] : []),
  ];
}

function steadyFinding(check: StageCheck): Finding {
  const findings = chargeFindings({ ...chargeReadings(check), ...NO_PRESSURES }, check.limits);
  return staged(check, getOf(findings, refrigerantRules.stabilized));
}

/** One of the two, with the other's pressure left out, so that a pressure beyond the table spoils only its own side. */
function chargeFinding(check: StageCheck, kind: ChargeKind): Finding {
  const rule = refrigerantRules[kind];
  return guarded(check, rule, CHARGE_READINGS[kind], () => {
    const result = chargeResult(check, kind);
    const all = chargeReadings(check);
    const [pressure] = CHARGE_READINGS[kind];
    const readings: ChargeReadings = {
      ...all,
      ...NO_PRESSURES,
      [pressure]: all[pressure],
      [`${kind}UncertaintyF`]: result === null ? null : instrumentUncertaintyF(result),
    };
    return withAccuracy(check, getOf(chargeFindings(readings, check.limits), rule), result);
  });
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

/** Names the reading that would decide, and withholds the verdict near a limit when an accuracy is not known. */
function withAccuracy(check: StageCheck, said: Finding, result: Result | null): Finding {
  const target = said.figures.find((figure) => figure.label === "target")?.value;
  if (result === null || target === undefined || !isSteady(check)) return staged(check, said);
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

function getOf(findings: readonly Finding[], rule: Rule): Finding {
  const found = findings.find((candidate) => candidate.ruleId === rule.id);
  if (found === undefined) throw new Error(`the refrigerant folder gave no finding for ${rule.id}`);
  return found;
}
