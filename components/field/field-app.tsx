"use client";

import { useEffect } from "react";
import { Notice } from "@/components/ui/notice";
import type { PhoneState } from "@/lib/offline/phone-state";
import { FieldFrame } from "./field-frame";
import { LinkState, useContact } from "./link-state";
import { TodayScreen } from "./today-screen";
import { useHabits } from "./use-habits";
import { useJob } from "./use-job";
import { useJobPlaces } from "./use-job-places";
import { phone, usePhone } from "./use-phone";
import { type Place, usePlace } from "./use-place";
import { useWorker } from "./use-worker";

/** The field screens: one page that works with what this phone holds. */
export function FieldApp() {
  const state = usePhone();
  const [place, go] = usePlace();
  const [habits] = useHabits();
  const job = useJob(state, place.job);
  const isReady = state.phase === "ready";
  useWorker(isReady);
  useContact(state);
  useEffect(() => {
    void phone().reload();
  }, []);
  const JobPlaces = useJobPlaces(isReady);
  useEffect(() => {
    document.documentElement.toggleAttribute("data-torch", habits.torch);
  }, [habits.torch]);
  // Nobody's work is here and nobody is signed in: only the sign-in can go on.
  const mustSignIn = state.phase === "nothing" && state.link === "sign in" && state.news === null;
  useEffect(() => {
    if (mustSignIn) window.location.assign("/sign-in");
  }, [mustSignIn]);

  if (state.phase !== "ready") {
    return (
      <FieldFrame accent={null} brand="Dewledger" title="Your jobs" back={null} sendState={null}>
        {state.news === null ? null : (
          <Notice
            kind="information"
            title={state.news}
            action={
              <a href="/sign-in" className="button button-secondary">
                Sign in
              </a>
            }
          />
        )}
        <p role="status" hidden={state.news !== null}>
          {state.refusal ??
            (state.link === "offline"
              ? "This phone holds no jobs yet. Open this page once with a signal; then it works without."
              : "Getting your jobs…")}
        </p>
      </FieldFrame>
    );
  }
  if (job === null) {
    return place.job === null ? (
      <TodayScreen state={state} go={go} />
    ) : (
      <InPlaceOfJob state={state} go={go} title="This job is not on this phone">
        It is not assigned to you, or the office has closed it.
      </InPlaceOfJob>
    );
  }
  if (JobPlaces === null) {
    return (
      <InPlaceOfJob state={state} go={go} title={job.job.customerName}>
        {state.link === "offline"
          ? "The signal went before the screens of this job had come. They come by themselves with the next signal."
          : "Getting the screens of this job…"}
      </InPlaceOfJob>
    );
  }
  return <JobPlaces work={job} at={place.at} go={go} />;
}

type InPlaceProps = {
  readonly state: PhoneState;
  readonly go: (place: Place) => void;
  readonly title: string;
  readonly children: string;
};

/** Why a job's screens do not stand here, and the way back to the list. */
function InPlaceOfJob({ state, go, title, children }: InPlaceProps) {
  return (
    <FieldFrame
      accent={state.bundle?.accent ?? null}
      brand={state.bundle?.companyName ?? ""}
      title={title}
      back={{ label: "Your jobs", go: () => go({ job: null, at: null }) }}
      sendState={<LinkState state={state} />}
    >
      <p role="status">{children}</p>
    </FieldFrame>
  );
}
