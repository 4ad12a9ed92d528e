"use server";

import { revalidatePath } from "next/cache";
import { keepForecastSchema } from "@/lib/schemas/forecast";
import {
  addOptionSchema,
  chooseOptionSchema,
  moveOptionSchema,
  removeOptionSchema,
  saveOptionSchema,
} from "@/lib/schemas/option";
import { action } from "@/lib/server/action";
import * as choosing from "@/lib/services/choose-option";
import { askForForecast } from "@/lib/services/keep-forecast";
import * as options from "@/lib/services/options";

const permission = "design.edit";
const refresh = (jobId: string) => revalidatePath(`/jobs/${jobId}`, "layout");

export const addOption = action({
  name: "add option",
  permission,
  schema: addOptionSchema,
  run: async (scope, input) => {
    const id = await options.addOption(scope, input);
    refresh(input.jobId);
    return id as string;
  },
});

export const saveOption = action({
  name: "save option",
  permission,
  schema: saveOptionSchema,
  run: async (scope, input) => {
    const saved = await options.saveOption(scope, input);
    refresh(input.jobId);
    return saved;
  },
});

export const moveOption = action({
  name: "move option",
  permission,
  schema: moveOptionSchema,
  run: async (scope, input) => {
    await options.moveOption(scope, input);
    refresh(input.jobId);
  },
});

export const removeOption = action({
  name: "remove option",
  permission,
  schema: removeOptionSchema,
  run: async (scope, input) => {
    await options.removeOption(scope, input);
    refresh(input.jobId);
  },
});

export const chooseOption = action({
  name: "choose option",
  permission,
  schema: chooseOptionSchema,
  run: async (scope, input) => {
    await choosing.chooseOption(scope, input);
    refresh(input.jobId);
  },
});

export const keepForecast = action({
  name: "keep forecast",
  permission,
  schema: keepForecastSchema,
  run: async (scope, input) => {
    await askForForecast(scope, input);
    refresh(input.jobId);
    return null;
  },
});
