import { standardPressurePsia } from "@/lib/engineering/air";
import { numberText } from "@/lib/engineering/airflow";
import { subcoolingF, superheatF } from "@/lib/engineering/refrigerant";
import { ask, type QuestionContext, quietly, type SanityQuestion } from "./question";
import type { ReadingName } from "./readings";

/**
 * What is odd about the refrigerant and electrical readings of a stage.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function plantQuestions(context: QuestionContext): readonly SanityQuestion[] {
  return [...refrigerantQuestions(context), ...powerQuestion(context)];
}

function refrigerantQuestions(context: QuestionContext): readonly SanityQuestion[] {
  const { at, cooling, site } = context;
  const [suction, liquid] = [at("suctionPressurePsig"), at("liquidPressurePsig")];
  const questions = [
    ...ask(
      suction >= liquid,
      "startup.pressures-swapped",
      `The suction pressure ${text(suction)} psig is not below the liquid pressure ${text(liquid)} psig. Are the hoses swapped, or is the compressor off?`,
      ["suctionPressurePsig", "liquidPressurePsig"],
    ),
    ...ask(
      cooling && at("liquidLineF") < at("outdoorDryBulbF"),
      "startup.liquid-line-below-outdoor-air",
      `The liquid line is ${text(at("liquidLineF"))} °F, colder than the outdoor air ${text(at("outdoorDryBulbF"))} °F that cools it. Where was each probe?`,
      ["liquidLineF", "outdoorDryBulbF"],
    ),
  ];
  if (site.refrigerant === null || site.elevationFt === null) return questions;
  const place = { refrigerant: site.refrigerant, sitePressurePsia: standardPressurePsia(site.elevationFt) };
  const below = (
    name: "superheat" | "subcooling",
    value: () => number,
    fields: readonly ReadingName[],
  ): readonly SanityQuestion[] =>
    fields.some((field) => Number.isNaN(at(field)))
      ? []
      : quietly(() =>
          ask(
            value() < 0,
            `startup.${name}-below-zero`,
            `The readings mean ${text(value())} °F of ${name}, below zero. Is it the right refrigerant, and does the probe touch bare pipe under insulation?`,
            fields,
          ),
        );
  return [
    ...questions,
    ...below(
      "superheat",
      () => superheatF({ ...place, suctionPressurePsig: suction, suctionLineF: at("suctionLineF") }),
      ["suctionPressurePsig", "suctionLineF"],
    ),
    ...below(
      "subcooling",
      () => subcoolingF({ ...place, liquidPressurePsig: liquid, liquidLineF: at("liquidLineF") }),
      ["liquidPressurePsig", "liquidLineF"],
    ),
  ];
}

/** Real power cannot exceed volts times amps. */
function powerQuestion({ at }: QuestionContext): readonly SanityQuestion[] {
  const apparent = at("outdoorUnitVolts") * at("outdoorUnitAmps");
  return ask(
    at("outdoorUnitPowerW") > apparent,
    "startup.power-above-volt-amps",
    `The outdoor unit shows ${text(at("outdoorUnitPowerW"), 0)} W, more than ${text(at("outdoorUnitVolts"), 0)} V × ${text(at("outdoorUnitAmps"))} A = ${text(apparent, 0)} VA. Was one read at another moment or on another conductor?`,
    ["outdoorUnitPowerW", "outdoorUnitVolts", "outdoorUnitAmps"],
  );
}

function text(value: number, decimals = 1): string {
  return numberText(value, decimals);
}
