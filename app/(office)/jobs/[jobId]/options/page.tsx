import type { Metadata } from "next";
import { OptionDesk } from "@/components/options/option-desk";
import { load, pageScope } from "@/lib/server/page";
import { optionsView } from "@/lib/services/options";
import { chosenModel } from "../../actions";
import { addOption, chooseOption, keepForecast, moveOption, removeOption, saveOption } from "./actions";

export const metadata: Metadata = { title: "Options" };

export default async function OptionsPage({
  params,
}: {
  readonly params: Promise<{ readonly jobId: string }>;
}) {
  const scope = await pageScope("job.read");
  const view = await load(optionsView(scope, (await params).jobId));
  return (
    <OptionDesk
      view={view}
      doors={{
        add: addOption,
        save: saveOption,
        move: moveOption,
        remove: removeOption,
        choose: chooseOption,
        keepForecast,
        readModel: chosenModel,
      }}
    />
  );
}
