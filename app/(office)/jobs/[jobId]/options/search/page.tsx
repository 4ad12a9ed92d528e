import type { Metadata } from "next";
import { SearchDesk } from "@/components/forecast/search-desk";
import { load, pageScope } from "@/lib/server/page";
import { optionsView } from "@/lib/services/options";
import { addOption, saveOption } from "../actions";

export const metadata: Metadata = { title: "Search settings" };

export default async function SearchPage({
  params,
}: {
  readonly params: Promise<{ readonly jobId: string }>;
}) {
  const scope = await pageScope("job.read");
  const view = await load(optionsView(scope, (await params).jobId));
  return <SearchDesk view={view} doors={{ add: addOption, save: saveOption }} />;
}
