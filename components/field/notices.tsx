import { Notice } from "@/components/ui/notice";
import { Button } from "@/components/ui/plain-button";
import { jobsThatNeedYou } from "@/lib/offline/needs-you";
import type { PhoneState } from "@/lib/offline/phone-state";
import { phone } from "./use-phone";
import type { Place } from "./use-place";
import { useNewVersion } from "./use-worker";

type Props = { readonly state: PhoneState; readonly go: (place: Place) => void };

/** What the person must know before going on, each with the one thing to do. */
export function Notices({ state, go }: Props) {
  const loadNew = useNewVersion();
  const [held] = jobsThatNeedYou(state);
  return (
    <div className="grid gap-3 [&:not(:empty)]:mb-4">
      {state.news === null ? null : (
        <Notice
          kind="information"
          title={state.news}
          action={<Button onClick={() => phone().newsSeen()}>Seen</Button>}
        />
      )}
      {state.storageProblem === null ? null : <Notice kind="problem" title={state.storageProblem} />}
      {state.link === "sign in" ? (
        <Notice
          kind="problem"
          title="Your sign-in has ended"
          action={
            <a href="/sign-in" className="button button-primary">
              Sign in again
            </a>
          }
        >
          Nothing is lost: what you entered stays on this phone and goes out when you are signed in again.
        </Notice>
      ) : null}
      {held === undefined ? null : (
        <Notice
          kind="problem"
          title={
            held.count === 1 ? "One of your entries needs you" : `${held.count} of your entries need you`
          }
          action={
            <Button onClick={() => go({ job: held.jobId, at: "needs-you" })} variant="primary">
              Look at {held.count === 1 ? "it" : "them"}
            </Button>
          }
        />
      )}
      {state.refusal === null ? null : (
        <Notice kind="problem" title="The office did not take everything">
          {state.refusal}
        </Notice>
      )}
      {loadNew === null ? null : (
        <Notice
          kind="information"
          title="A newer version of this page is ready"
          action={<Button onClick={loadNew}>Load it now</Button>}
        >
          What you entered stays.
        </Notice>
      )}
    </div>
  );
}
