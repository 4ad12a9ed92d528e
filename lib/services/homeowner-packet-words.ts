/** What a measured quantity means to somebody outside the trade, by ledger line. */
export const PLAIN_WORDS: Readonly<Record<string, string>> = {
  total: "How much heat the system takes out of the house in an hour.",
  sensible: "The part of it that lowers the temperature.",
  latent: "The part of it that dries the air.",
  moisture: "The water that leaves by the drain in an hour of steady running.",
  "airflow-full": "The air the fan moves at full capacity.",
  "airflow-first": "The air the fan moves in its long, gentle first stage.",
  static: "How hard the fan has to push against ducts and filter.",
  subcooling: "Shows, with superheat, whether the refrigerant charge is right.",
  superheat: "Shows, with subcooling, whether the refrigerant charge is right.",
};

/** Why each setting is as it is. */
export const WHY: Readonly<Record<string, string>> = {
  coolingSetpointF: "The temperature the thermostat holds.",
  firstStageStartOffsetF: "Lets the gentle first stage start before the house is warm.",
  secondStageStartOffsetF: "Keeps full capacity for the hottest hours.",
  minimumCompressorRunMin: "Long runs dry the air; short ones only cool it.",
  minimumCompressorRestMin: "Protects the compressor and lets the coil drain.",
  stepBackToFirstStage: "Returns to long, gentle running once the house has recovered.",
  coolingPastSetpointF: "Cooling on below the setpoint to dry the air.",
  fanRunOnAfterCoolingS: "A fan running over a wet coil puts the water back into the house.",
  fanBetweenCalls: "Between calls a still coil drains; a blown one re-humidifies the house.",
};

export const HOW_TO_RUN = [
  "Set the temperature once and leave it; long steady running dries the air best.",
  "Leave the fan on “auto”. A fan that runs between calls blows water off the wet coil back into the house.",
  "Change the filter when it looks grey; a loaded filter takes airflow away.",
  "Keep windows closed on humid days, also when it is mild outside.",
];
export const WHEN_TO_CALL = [
  "The humidity in the house stays above its limit for more than a day.",
  "It smells musty, or water stands near the indoor unit.",
  "The system starts and stops every few minutes, or never stops on a mild day.",
];
export const CAUTIONS = [
  "Do not open the units: mains voltage and refrigerant under pressure. Licensed technicians do that under local codes.",
  "Where anything burns fuel in the house, have carbon monoxide alarms and have draft tested after changes to airflow or tightness.",
];
