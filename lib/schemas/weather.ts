import { z } from "zod";

const degrees = (label: string, most: number) =>
  z
    .string()
    .trim()
    .transform((text, context) => {
      if (text === "") return null;
      const plain = text.replace("−", "-");
      if (/^[+-]?\d{1,3}(\.\d*)?$/.test(plain) && Math.abs(Number(plain)) <= most) return Number(plain);
      context.addIssue({
        code: "custom",
        message: `${label}: enter degrees from -${most} to ${most}, such as ${most === 90 ? "29.76" : "-95.37"}.`,
      });
      return z.NEVER;
    });

/** Which weather year a job is held against, and where its home is. */
export const chooseWeatherSchema = z
  .strictObject({
    jobId: z.uuid(),
    weatherFileId: z.union([z.literal(""), z.uuid()]).transform((id) => (id === "" ? null : id)),
    latitude: degrees("Latitude", 90),
    longitude: degrees("Longitude", 180),
  })
  .superRefine(({ latitude, longitude }, context) => {
    if ((latitude === null) === (longitude === null)) return;
    const path = [latitude === null ? "latitude" : "longitude"];
    context.addIssue({ code: "custom", path, message: "Give both latitude and longitude, or neither." });
  });
export type ChooseWeatherInput = z.output<typeof chooseWeatherSchema>;

export const weatherIdSchema = z.strictObject({ weatherFileId: z.uuid() });

export const weatherUploadSchema = z.strictObject({
  name: z
    .string()
    .trim()
    .min(1, { error: "Name: say which place and which years." })
    .max(120, { error: "Name is longer than 120 characters." }),
  sourceNote: z
    .string()
    .trim()
    .min(1, { error: "Source: say who made the file and on which terms it may be used." })
    .max(400, { error: "Source is longer than 400 characters." }),
});
