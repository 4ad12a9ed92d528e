"use server";

import { revalidatePath } from "next/cache";
import type { Permission } from "@/lib/domain/roles";
import { EDIT_PERMISSION, SIGN_PERMISSION, stagesWith } from "@/lib/domain/stage-permissions";
import {
  correctJobSchema,
  createJobSchema,
  modelSchema,
  reopenStageSchema,
  saveStageSchema,
  scheduleJobSchema,
  signStageSchema,
} from "@/lib/schemas/job";
import { removeViewSchema, saveViewSchema } from "@/lib/schemas/saved-view";
import { action } from "@/lib/server/action";
import { correctJob as correctJobFacts } from "@/lib/services/correct-job";
import { readModel } from "@/lib/services/job-view";
import * as jobs from "@/lib/services/jobs";
import { scheduleJob as scheduleJobPlan } from "@/lib/services/plan-job";
import { removeView, saveView } from "@/lib/services/saved-views";
import * as stages from "@/lib/services/stages";

export const createJob = action({
  name: "create job",
  permission: "job.create",
  schema: createJobSchema,
  run: jobs.createJob,
});

export const correctJob = action({
  name: "correct job",
  permission: "job.create",
  schema: correctJobSchema,
  run: async (scope, input) => {
    await correctJobFacts(scope, input);
    revalidatePath(`/jobs/${input.jobId}`, "layout");
  },
});

export const scheduleJob = action({
  name: "schedule job",
  permission: "job.assign",
  schema: scheduleJobSchema,
  run: async (scope, input) => {
    await scheduleJobPlan(scope, input);
    revalidatePath(`/jobs/${input.jobId}`, "layout");
  },
});

export const keepView = action({
  name: "keep jobs view",
  permission: "job.read",
  schema: saveViewSchema,
  run: async (scope, input) => {
    await saveView(scope, "jobs", input);
    revalidatePath("/jobs");
  },
});

export const dropView = action({
  name: "remove jobs view",
  permission: "job.read",
  schema: removeViewSchema,
  run: async (scope, input) => {
    await removeView(scope, "jobs", input);
    revalidatePath("/jobs");
  },
});

const saving = (name: string, permission: Permission) =>
  action({
    name,
    permission,
    schema: saveStageSchema,
    run: async (scope, input) => {
      const saved = await stages.saveStage(scope, stagesWith(EDIT_PERMISSION, permission), input);
      revalidatePath(`/jobs/${input.jobId}`, "layout");
      return saved;
    },
  });

export const saveDesign = saving("save design record", "design.edit");
export const saveStartup = saving("save startup record", "startup.fill");
export const saveReview = saving("save humidity review", "review.edit");

const signing = (name: string, permission: Permission) =>
  action({
    name,
    permission,
    schema: signStageSchema,
    run: async (scope, input) => {
      await stages.signStage(scope, stagesWith(SIGN_PERMISSION, permission), input);
      revalidatePath(`/jobs/${input.jobId}`, "layout");
    },
  });

export const signDesign = signing("sign design record", "design.sign");
export const signStartup = signing("sign startup record", "startup.sign");
export const signReview = signing("sign humidity review", "review.sign");

export const reopenRecord = action({
  name: "reopen record",
  permission: "record.reopen",
  schema: reopenStageSchema,
  run: async (scope, input) => {
    await stages.reopenStage(scope, input);
    revalidatePath(`/jobs/${input.jobId}`, "layout");
  },
});

export const chosenModel = action({
  name: "read equipment model",
  permission: "catalog.read",
  schema: modelSchema,
  run: (scope, input) => readModel(scope, input.modelId),
});
