import { moistAir, standardPressurePsia } from "@/lib/engineering/air";
import { subcoolingF, superheatF } from "@/lib/engineering/refrigerant";
import { type DeliveredCapacity, deliveredCapacity, type Readings } from "@/lib/engineering/startup";
import { type Capacity, capacityOf, chosenSystem } from "./capacity";
import { type Derived, type JobContext, unknown } from "./context";
import { andThen, derive } from "./derive";
import { externalStatic, fieldOfReading, readingsOf, type StartupStageKey } from "./startup-readings";

export type MeasuredStage = {
  readonly key: StartupStageKey;
  readonly delivered: Derived<DeliveredCapacity>;
  readonly expected: Derived<Capacity>;
  readonly airflowCfm: number | null;
  readonly externalStaticInWc: number | null;
  readonly superheatF: Derived<number>;
  readonly subcoolingF: Derived<number>;
};

/** What the readings of one stage say by themselves, and what the system should give at their conditions. */
export function measuredStage(context: JobContext, key: StartupStageKey): MeasuredStage {
  const { elevationFt, inputs: all } = context;
  const inputs = all.startup_record;
  const readings = readingsOf(key, inputs, context.instruments);
  const { refrigerant } = inputs;
  const place = (given: { elevationFt: number }) => ({
    sitePressurePsia: standardPressurePsia(given.elevationFt),
  });
  return {
    key,
    delivered: delivered(context, readings, key),
    expected: expected(context, readings, key),
    airflowCfm: inputs[`${key}AirflowCfm`],
    externalStaticInWc: externalStatic(key, inputs),
    superheatF: derive(
      {
        refrigerant,
        elevationFt,
        pressure: inputs[`${key}SuctionPressurePsig`],
        line: inputs[`${key}SuctionLineF`],
      },
      (given) =>
        superheatF({
          ...place(given),
          refrigerant: given.refrigerant,
          suctionPressurePsig: given.pressure,
          suctionLineF: given.line,
        }) as number,
    ),
    subcoolingF: derive(
      {
        refrigerant,
        elevationFt,
        pressure: inputs[`${key}LiquidPressurePsig`],
        line: inputs[`${key}LiquidLineF`],
      },
      (given) =>
        subcoolingF({
          ...place(given),
          refrigerant: given.refrigerant,
          liquidPressurePsig: given.pressure,
          liquidLineF: given.line,
        }) as number,
    ),
  };
}

function delivered(
  context: JobContext,
  readings: Readings,
  key: StartupStageKey,
): Derived<DeliveredCapacity> {
  const missing = [
    ...(["airflowCfm", "returnDryBulbF", "supplyDryBulbF"] as const).filter(
      (name) => readings[name] === null,
    ),
    ...(["return", "supply"] as const)
      .filter(
        (side) => readings[`${side}WetBulbF`] === null && readings[`${side}RelativeHumidityPct`] === null,
      )
      .map((side) => `${side}WetBulbF` as const),
  ];
  if (missing.length > 0) return unknown(missing.flatMap((name) => fieldOfReading(key, name) ?? []));
  return derive({ elevationFt: context.elevationFt }, ({ elevationFt }) =>
    deliveredCapacity({ elevationFt, readings, systematicShare: context.limits["startup.systematicShare"] }),
  );
}

/** What the system as left should give at the conditions of these readings. */
function expected(context: JobContext, readings: Readings, key: StartupStageKey): Derived<Capacity> {
  const { startup_record: startup, equipment_selection: selection, control_setup: controls } = context.inputs;
  const { elevationFt } = context;
  const system = chosenSystem(
    context.model,
    startup.leftCapacitySetting ?? selection.capacitySetting,
    controls.colderCoilCooling,
  );
  const returnDbF = readings.returnDryBulbF?.value ?? null;
  const returnWbF = readings.returnWetBulbF?.value ?? null;
  const returnRhPct = readings.returnRelativeHumidityPct?.value ?? null;
  const wetBulb =
    returnWbF !== null
      ? derive({ returnWbF }, (given) => given.returnWbF)
      : derive(
          { elevationFt, returnDbF, returnRhPct },
          (given) =>
            moistAir({
              dryBulbF: given.returnDbF,
              relativeHumidityPct: given.returnRhPct,
              pressurePsia: standardPressurePsia(given.elevationFt),
            }).wetBulbF as number,
        );
  const outdoorDbF = startup.outdoorDbF;
  const airflowCfm = readings.airflowCfm?.value ?? null;
  return andThen(system, (chosen) =>
    andThen(wetBulb, (indoorWbF) => {
      if (returnDbF === null || outdoorDbF === null || airflowCfm === null || elevationFt === null)
        return unknown([]);
      return capacityOf(
        { ...chosen, stage: key },
        { indoorDbF: returnDbF, indoorWbF, outdoorDbF, airflowCfm, elevationFt },
      );
    }),
  );
}
