import { Card } from "@/components/ui/card";
import { Button } from "@/components/ui/plain-button";
import { SafetyCaution } from "@/components/ui/safety-caution";
import { screenState } from "@/lib/domain/startup-walk";
import { AsFound } from "./as-found";
import { BringList } from "./bring-list";
import { CrewCard } from "./crew-card";
import { FieldFrame } from "./field-frame";
import { LinkPlain } from "./link-plain";
import { LinkState } from "./link-state";
import { Notices } from "./notices";
import { Questions } from "./questions";
import { JobMark } from "./today-screen";
import type { Work } from "./use-job";
import type { Place } from "./use-place";

type Props = { readonly work: Work; readonly go: (place: Place) => void };

/** One job: where, what to set, what to bring, and the way into its readings. */
export function JobScreen({ work, go }: Props) {
  const { job, state, screens, values } = work;
  const at = (id: string) => go({ job: job.id, at: id });
  const next = screens.find((screen) => screenState(screen, values) !== "done");
  const done = screens.filter((screen) => screenState(screen, values) === "done").length;
  const sections = [...new Set(screens.map((screen) => screen.section))];
  return (
    <FieldFrame
      accent={state.bundle?.accent ?? null}
      brand={state.bundle?.companyName ?? ""}
      title={job.customerName}
      lead={`${job.address} · job ${job.number}`}
      back={{ label: "Your jobs", go: () => go({ job: null, at: null }) }}
      sendState={<LinkState state={state} />}
      bottomBar={
        <Button variant="primary" wide onClick={() => at(next?.id ?? "finish")}>
          {done === 0 ? "Begin the startup" : next ? `Go on: ${done} of ${screens.length}` : "Finish"}
        </Button>
      }
    >
      <div className="grid gap-4">
        <Notices state={state} go={go} />
        <Questions work={work} />
        <SafetyCaution>
          Mains voltage, pressure and a hot attic: lock out before opening a panel, wear eye protection, drink
          water, tread on framing. The manufacturer’s instructions and local codes govern; only certified
          technicians open the refrigerant circuit.
        </SafetyCaution>
        <div className="flex flex-wrap gap-2">
          {job.customerPhone === "" ? null : (
            <LinkPlain href={`tel:${job.customerPhone}`}>Call {job.customerPhone}</LinkPlain>
          )}
          <LinkPlain href={`geo:0,0?q=${encodeURIComponent(job.address)}`}>Find the way</LinkPlain>
        </div>
        {job.note === "" ? null : <p className="whitespace-pre-line">{job.note}</p>}
        <CrewCard job={job} />
        <BringList work={work} />
        <Card title="Readings" aside={<JobMark job={job} state={state} />}>
          <ul className="grid gap-1">
            {sections.map((section) => {
              const own = screens.filter((screen) => screen.section === section);
              const ready = own.filter((screen) => screenState(screen, values) === "done").length;
              const first = own.find((screen) => screenState(screen, values) !== "done") ?? own[0];
              return (
                <li key={section}>
                  <Button wide className="justify-between!" onClick={() => at(first?.id ?? "finish")}>
                    <span>{section}</span>
                    <span className="font-normal text-muted">
                      {ready} of {own.length}
                    </span>
                  </Button>
                </li>
              );
            })}
            <li>
              <Button wide onClick={() => at("settings")}>
                Settings as left
              </Button>
            </li>
            <li>
              <Button wide onClick={() => at("photos")}>
                Photos and notes
              </Button>
            </li>
            <li>
              <Button wide onClick={() => at("findings")}>
                What the readings say
              </Button>
            </li>
            <li>
              <Button wide onClick={() => at("finish")}>
                Before leaving
              </Button>
            </li>
          </ul>
        </Card>
        <AsFound work={work} />
      </div>
    </FieldFrame>
  );
}
