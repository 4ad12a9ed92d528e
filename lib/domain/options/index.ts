export {
  LEAST_OPTIONS,
  MOST_OPTIONS,
  OPTION_VERSION,
  type OptionField,
  type OptionInputs,
  optionFields,
  optionSchema,
  readStoredOption,
} from "./fields";
export { type OptionFigures, optionFigures } from "./figures";
export {
  inputsWithOption,
  type Option,
  type OptionChoice,
  optionContext,
  optionFromRecords,
  STAGE_OF,
  stagesChangedBy,
} from "./option";
export type { Sensitivity } from "./sensitivity";
