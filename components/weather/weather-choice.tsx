"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { heard } from "@/components/forms/still-there";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { Button } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { Notice } from "@/components/ui/notice";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";
import { numberText } from "@/lib/charts/number-text";

export type WeatherRow = {
  readonly id: string;
  readonly name: string;
  readonly sourceNote: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly elevationFt: number;
  readonly distanceMi: number | null;
  readonly higherByFt: number | null;
  /** Jobs held against it. */
  readonly jobs: number;
};

type Props = {
  readonly jobId: string;
  readonly chosenId: string | null;
  readonly latitude: number | null;
  readonly longitude: number | null;
  readonly files: readonly WeatherRow[];
  readonly mayEdit: boolean;
  readonly choose: (input: unknown) => Promise<Answer>;
  readonly retire: (input: unknown) => Promise<Answer>;
};

/** Where the home is, and the weather years around it, the nearest first. */
export function WeatherChoice({
  jobId,
  chosenId,
  latitude,
  longitude,
  files,
  mayEdit,
  choose,
  retire,
}: Props) {
  const router = useRouter();
  const [sent, send, busy] = useSentForm((form) => {
    const text = (name: string) => String(form.get(name) ?? "");
    return choose({
      jobId,
      weatherFileId: text("weatherFileId"),
      latitude: text("latitude"),
      longitude: text("longitude"),
    });
  });
  const [refused, setRefused] = useState<string | null>(null);
  const problems = problemsOf(sent);
  const takeOff = async (weatherFileId: string) => {
    try {
      const said = heard(await retire({ weatherFileId }));
      setRefused(said.ok ? null : said.message);
      router.refresh();
    } catch {
      setRefused("No connection to the server. Nothing was changed; try again when there is one.");
    }
  };
  return (
    <Card title="Weather year of this job">
      <ActionForm action={send} className="grid gap-4">
        <Refusal form={sent} />
        {sent.state === "done" ? <Notice kind="done" title="Saved." /> : null}
        {refused === null ? null : <Notice kind="problem" title={refused} />}
        <p className="text-sm text-muted">
          Design values, the forecast and the sun and wind beside a log come from this year. The nearest
          station is not always the likeliest: one on the coast or much higher has another climate.
        </p>
        <div className="grid gap-4 sm:grid-cols-2">
          <TextField
            name="latitude"
            label="Latitude of the home"
            optional
            hint="Degrees north, such as 29.76."
            defaultValue={latitude === null ? "" : String(latitude)}
            error={problemOf(problems, "latitude")}
          />
          <TextField
            name="longitude"
            label="Longitude of the home"
            optional
            hint="Degrees east; in America below zero, such as -95.37."
            defaultValue={longitude === null ? "" : String(longitude)}
            error={problemOf(problems, "longitude")}
          />
        </div>
        <fieldset className="grid gap-2">
          <legend className="mb-1 font-semibold">Weather years</legend>
          {files.map((file, index) => (
            <div key={file.id} className="flex flex-wrap items-start gap-x-4 gap-y-1 border border-rule p-3">
              <label className="flex min-h-8 min-w-0 flex-1 items-start gap-2">
                <input
                  type="radio"
                  name="weatherFileId"
                  value={file.id}
                  defaultChecked={file.id === chosenId}
                  disabled={!mayEdit}
                  className="mt-1"
                />
                <span className="min-w-0">
                  <span className="font-semibold">{file.name}</span>
                  {index === 0 && file.distanceMi !== null ? " (nearest)" : ""}
                  <span className="block text-sm">{distanceWords(file)}</span>
                  <span className="block text-sm text-muted">{file.sourceNote}</span>
                </span>
              </label>
              {mayEdit && file.id !== chosenId ? (
                <Button aria-label={`Take ${file.name} off the list`} onClick={() => takeOff(file.id)}>
                  Take off the list
                </Button>
              ) : null}
            </div>
          ))}
          {files.length === 0 ? <p className="text-muted">No weather year has been added yet.</p> : null}
        </fieldset>
        {mayEdit ? (
          <div>
            <SubmitButton busy={busy} busyText="Saving…">
              Save
            </SubmitButton>
          </div>
        ) : null}
      </ActionForm>
    </Card>
  );
}

function distanceWords({
  distanceMi,
  higherByFt,
  elevationFt,
  latitude,
  longitude,
  jobs,
}: WeatherRow): string {
  const away =
    distanceMi === null
      ? `at ${numberText(latitude, 2)}°, ${numberText(longitude, 2)}°; say where the home is to see how far`
      : `${numberText(distanceMi, 0)} mi away`;
  const height =
    higherByFt === null
      ? `${numberText(elevationFt, 0)} ft above sea level`
      : `${numberText(Math.abs(higherByFt), 0)} ft ${higherByFt < 0 ? "lower" : "higher"} than the home`;
  return `${away}; ${height}; ${jobs === 1 ? "1 job" : `${numberText(jobs, 0)} jobs`}`;
}
