import { airSideCapacity, standardPressurePsia } from "@/lib/engineering/air";
import { numberText } from "@/lib/engineering/airflow";
import { airAt, moistureName } from "./delivered-capacity";
import { EXPECTED } from "./expected-at-conditions";
import { ask, type QuestionContext, quietly, type SanityQuestion } from "./question";

/**
 * What is odd about the air readings of a stage.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function airQuestions(context: QuestionContext): readonly SanityQuestion[] {
  return [
    ...temperatureQuestions(context),
    ...quietly(() => moistureQuestions(context)),
    ...quietly(() => tooGoodQuestion(context)),
  ];
}

function temperatureQuestions({ at, cooling }: QuestionContext): readonly SanityQuestion[] {
  const [supply, back] = [at("supplyDryBulbF"), at("returnDryBulbF")];
  const wrongWay = cooling ? supply >= back : supply <= back;
  return [
    ...ask(
      wrongWay,
      cooling ? "startup.supply-warmer" : "startup.supply-colder",
      `The supply air is ${text(supply)} °F and the return ${text(back)} °F, yet the stage is in ${cooling ? "cooling" : "heating"}. Are the two swapped, or is the compressor off?`,
      ["supplyDryBulbF", "returnDryBulbF"],
    ),
    ...(["return", "supply"] as const).flatMap((side) =>
      ask(
        at(`${side}WetBulbF`) > at(`${side}DryBulbF`),
        `startup.${side}-wet-bulb-above-dry-bulb`,
        `The ${side} wet bulb ${text(at(`${side}WetBulbF`))} °F is above its dry bulb ${text(at(`${side}DryBulbF`))} °F, which cannot be. Are the two swapped?`,
        [`${side}WetBulbF`, `${side}DryBulbF`],
      ),
    ),
  ];
}

function moistureQuestions({ at, cooling, stage, site, limits }: QuestionContext): readonly SanityQuestion[] {
  if (site.elevationFt === null) return [];
  const pressurePsia = standardPressurePsia(site.elevationFt);
  const side = (which: "return" | "supply") => {
    const dryBulb = `${which}DryBulbF` as const;
    const wetBulb = `${which}WetBulbF` as const;
    const humidity = `${which}RelativeHumidityPct` as const;
    const moisture = moistureName(stage.readings, which);
    if (stage.readings[dryBulb] === null || stage.readings[moisture] === null) return null;
    const air = airAt(which, { [dryBulb]: at(dryBulb), [moisture]: at(moisture) }, pressurePsia);
    const apart = Math.abs(air.relativeHumidityPct - at(humidity));
    const disagreement = ask(
      moisture === wetBulb && apart > limits["startup.humidityDisagreementPct"],
      `startup.${which}-humidity-disagrees`,
      `The ${which} wet bulb means ${text(air.relativeHumidityPct)} % relative humidity, but ${text(at(humidity))} % was read. Which of the two is right?`,
      [wetBulb, humidity],
    );
    return { air, moisture, disagreement };
  };
  const [back, supply] = [side("return"), side("supply")];
  const wetter =
    back !== null && supply !== null && cooling && supply.air.humidityRatio > back.air.humidityRatio
      ? ask(
          true,
          "startup.supply-wetter",
          `The supply air holds ${text(supply.air.grainsPerLb)} gr/lb and the return ${text(back.air.grainsPerLb)} gr/lb: a coil cannot add water unless it is drying off. Is the wick wet and the probe out of the drip?`,
          [supply.moisture, back.moisture],
        )
      : [];
  return [...(back?.disagreement ?? []), ...(supply?.disagreement ?? []), ...wetter];
}

function tooGoodQuestion({ at, stage, cooling, site, limits }: QuestionContext): readonly SanityQuestion[] {
  const { readings } = stage;
  const fields = [
    "airflowCfm",
    "returnDryBulbF",
    moistureName(readings, "return"),
    "supplyDryBulbF",
    moistureName(readings, "supply"),
  ] as const;
  if (site.elevationFt === null || fields.some((field) => readings[field] === null)) return [];
  const expectedBtuh = stage.expected.totalBtuh;
  if (expectedBtuh === null || expectedBtuh < EXPECTED.totalBtuh.least) return [];
  // The values alone decide a question; their uncertainty is the findings' work.
  const values = Object.fromEntries(fields.map((field) => [field, at(field)]));
  const pressurePsia = standardPressurePsia(site.elevationFt);
  const air = airSideCapacity({
    airflowCfm: at("airflowCfm"),
    entering: airAt("return", values, pressurePsia),
    leaving: airAt("supply", values, pressurePsia),
  });
  const share = (cooling ? air.totalBtuh : -air.sensibleBtuh) / expectedBtuh;
  return ask(
    share > limits["startup.shareQuestion"],
    "startup.more-than-expected",
    `The air readings mean ${text(share, 2)} times the capacity expected at these conditions. Can the airflow and the wet bulbs be read once more?`,
    fields,
  );
}

function text(value: number, decimals = 1): string {
  return numberText(value, decimals);
}
