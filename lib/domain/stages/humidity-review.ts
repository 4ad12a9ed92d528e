import { choice, date, defineFields, type InputsOf, reference, text } from "../fields";

const LOG = "Log";
const CONCLUSION = "Conclusion";

/** What the house did, read from its own log. Version 1. */
export const humidityReviewFields = defineFields({
  logImportId: reference({ label: "Log reviewed", group: LOG, to: "log", neededToSign: true }),
  conclusion: choice({
    label: "Conclusion",
    group: CONCLUSION,
    neededToSign: true,
    options: [
      { value: "kept", label: "the promise is kept" },
      { value: "broken", label: "the promise is not kept" },
      { value: "open", label: "cannot be told yet" },
    ],
  }),
  cause: text({ label: "Cause, when the house is too humid", group: CONCLUSION, maxLength: 1_000 }),
  nextLook: date({ label: "Look again on", group: CONCLUSION }),
  notes: text({ label: "Notes", group: CONCLUSION }),
});

export type HumidityReviewInputs = InputsOf<typeof humidityReviewFields>;
