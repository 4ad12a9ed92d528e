import { numberText } from "@/lib/charts/number-text";
import { forecastSentence, weatherPlace } from "@/lib/domain/forecast";
import type { ForecastTexts } from "./homeowner-text-types";

export const ENGLISH_FORECAST: ForecastTexts = {
  sentence: forecastSentence,
  restsOn: (houses) =>
    `Computed by a model of your house, minute by minute through a typical year, for ${houses} houses it may be: nobody has measured all that matters. It is a forecast, not a guarantee; the house’s own log shows later how it turned out.`,
  changedSince: (day) =>
    `The design has changed since its forecast of ${day}; a new one has not been kept yet.`,
  dryHours: "Hours at or below the limit",
  dryHoursMean: "In a typical year, with the house as it is assumed.",
  hoursAbove: "Hours above the limit",
  ofHours: (needed, hours) => `at least ${needed} of ${hours} h`,
  range: (low, high) => `From ${low} to ${high} h for what is not known.`,
  months: null,
};

export const SPANISH_FORECAST: ForecastTexts = {
  sentence: ({ figures, humidityLimitPct, weatherName }) => {
    const { dryHours, hoursAboveLimit } = figures.ranges;
    const [low, dry, high] = [dryHours.low, dryHours.central, dryHours.high].map((hours) =>
      numberText(hours, 0),
    );
    const hours = numberText(dryHours.central + hoursAboveLimit.central, 0);
    const range = low === high ? "" : `, y de ${low} a ${high} por lo que no se sabe de la casa y del año`;
    const share = dry === hours ? `las ${hours}` : `unas ${dry} de ${hours}`;
    return `En un año típico (${weatherPlace(weatherName)}) se prevé que este diseño mantenga la casa a ${humidityLimitPct} % o menos durante ${share} horas${range}.`;
  },
  restsOn: (houses) =>
    `Calculado con un modelo de su casa, minuto a minuto durante un año típico, para ${houses} casas que la suya podría ser: nadie ha medido todo lo que importa. Es una previsión, no una garantía; el registro de la propia casa muestra después cómo resultó.`,
  changedSince: (day) =>
    `El diseño ha cambiado desde su previsión del ${day}; todavía no se ha guardado una nueva.`,
  dryHours: "Horas en el límite o por debajo",
  dryHoursMean: "En un año típico, con la casa tal como se supone.",
  hoursAbove: "Horas por encima del límite",
  ofHours: (needed, hours) => `al menos ${needed} de ${hours} h`,
  range: (low, high) => `De ${low} a ${high} h por lo que no se sabe.`,
  months: {
    months: ["ene", "feb", "mar", "abr", "may", "jun", "jul", "ago", "sep", "oct", "nov", "dic"],
    axis: (limitPct) => `Horas por encima de ${limitPct} %`,
    key: "columna: la casa como se supone; línea: de menos a más",
    said: ({ hours, limitPct, month, inMonth, low, high }) =>
      `${hours} horas por encima de ${limitPct} % en el año; el mes con más es ${month}, ${inMonth} (de ${low} a ${high}).`,
  },
};
