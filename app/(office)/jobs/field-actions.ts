"use server";

import { revalidatePath } from "next/cache";
import {
  askOriginalSchema,
  askQuestionSchema,
  closeQuestionSchema,
  decideLateSchema,
} from "@/lib/schemas/field";
import { action } from "@/lib/server/action";
import { decideLatePhoto, decideLateValue } from "@/lib/services/late-readings";
import * as originals from "@/lib/services/photo-originals";
import * as questions from "@/lib/services/questions";

export const askQuestion = action({
  name: "ask question",
  permission: "question.ask",
  schema: askQuestionSchema,
  run: async (scope, input) => {
    await questions.askQuestion(scope, input);
    revalidatePath(`/jobs/${input.jobId}`, "layout");
  },
});

export const closeQuestion = action({
  name: "close question",
  permission: "question.ask",
  schema: closeQuestionSchema,
  run: async (scope, input) => {
    await questions.closeQuestion(scope, input);
    revalidatePath(`/jobs/${input.jobId}`, "layout");
  },
});

export const askOriginal = action({
  name: "ask for original photo",
  permission: "question.ask",
  schema: askOriginalSchema,
  run: async (scope, input) => {
    await originals.askOriginal(scope, input);
    revalidatePath(`/jobs/${input.jobId}`, "layout");
  },
});

export const withdrawOriginal = action({
  name: "withdraw wish for original photo",
  permission: "question.ask",
  schema: askOriginalSchema,
  run: async (scope, input) => {
    await originals.withdrawOriginal(scope, input);
    revalidatePath(`/jobs/${input.jobId}`, "layout");
  },
});

export const decideLate = action({
  name: "decide late reading",
  permission: "late.decide",
  schema: decideLateSchema,
  run: async (scope, input) => {
    await decideLateValue(scope, input);
    revalidatePath(`/jobs/${input.jobId}`, "layout");
  },
});

export const decidePhoto = action({
  name: "decide late photo",
  permission: "late.decide",
  schema: decideLateSchema,
  run: async (scope, input) => {
    await decideLatePhoto(scope, input);
    revalidatePath(`/jobs/${input.jobId}`, "layout");
  },
});
