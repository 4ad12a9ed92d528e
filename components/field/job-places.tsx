import { FindingsScreen } from "./findings-screen";
import { FinishScreen } from "./finish-screen";
import { JobScreen } from "./job-screen";
import { NeedsYouScreen } from "./needs-you-screen";
import { PhotosScreen } from "./photos-screen";
import { ReadingScreen } from "./reading-screen";
import { SettingsScreen } from "./settings-screen";
import type { Work } from "./use-job";
import type { Place } from "./use-place";

type Props = { readonly work: Work; readonly at: string | null; readonly go: (place: Place) => void };

/** The screens of one job. */
export function JobPlaces({ work, at, go }: Props) {
  switch (at) {
    case null:
      return <JobScreen work={work} go={go} />;
    case "findings":
      return <FindingsScreen work={work} go={go} />;
    case "finish":
      return <FinishScreen work={work} go={go} />;
    case "needs-you":
      return <NeedsYouScreen work={work} go={go} />;
    case "photos":
      return <PhotosScreen work={work} go={go} />;
    case "settings":
      return <SettingsScreen work={work} go={go} />;
    default: {
      const screen = work.screens.find((one) => one.id === at) ?? work.screens[0];
      // One screen, one set of inputs: the next reading must not inherit the last one's text.
      return screen ? <ReadingScreen key={screen.id} work={work} screen={screen} go={go} /> : null;
    }
  }
}
