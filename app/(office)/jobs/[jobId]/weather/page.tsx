import type { Metadata } from "next";
import { AddWeather } from "@/components/weather/add-weather";
import { WeatherChoice } from "@/components/weather/weather-choice";
import { load, pageScope } from "@/lib/server/page";
import { weatherChoiceView } from "@/lib/services/weather";
import { chooseWeather, retireWeather } from "./actions";

export const metadata: Metadata = { title: "Weather" };

export default async function WeatherPage({
  params,
}: {
  readonly params: Promise<{ readonly jobId: string }>;
}) {
  const scope = await pageScope("job.read");
  const { job, files, mayEdit } = await load(weatherChoiceView(scope, (await params).jobId));
  return (
    <div className="grid gap-6">
      <WeatherChoice
        jobId={job.id}
        chosenId={job.weatherFileId}
        latitude={job.home.latitude}
        longitude={job.home.longitude}
        files={files.map(({ file, ...rest }) => ({ ...file, ...rest }))}
        mayEdit={mayEdit}
        choose={chooseWeather}
        retire={retireWeather}
      />
      {mayEdit ? <AddWeather /> : null}
    </div>
  );
}
