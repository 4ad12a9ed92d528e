"use server";

import { revalidatePath } from "next/cache";
import { chooseWeatherSchema, weatherIdSchema } from "@/lib/schemas/weather";
import { action } from "@/lib/server/action";
import * as weather from "@/lib/services/weather";

export const chooseWeather = action({
  name: "choose weather",
  permission: "design.edit",
  schema: chooseWeatherSchema,
  run: async (scope, input) => {
    await weather.chooseWeather(scope, input);
    revalidatePath(`/jobs/${input.jobId}`, "layout");
  },
});

export const retireWeather = action({
  name: "retire weather file",
  permission: "design.edit",
  schema: weatherIdSchema,
  run: async (scope, { weatherFileId }) => {
    await weather.retireWeather(scope, weatherFileId);
    revalidatePath("/jobs", "layout");
  },
});
