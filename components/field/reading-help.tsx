import { Button } from "@/components/ui/plain-button";
import { correctionFor, dropsOf } from "@/lib/domain/startup-sums";
import type { WalkScreen } from "@/lib/domain/startup-walk";
import type { Work } from "./use-job";
import { phone } from "./use-phone";

type Props = { readonly work: Work; readonly screen: WalkScreen };

/** What follows from the readings of one screen by plain subtraction. */
export function ReadingHelp({ work, screen }: Props) {
  if (screen.id.endsWith("StaticProfile")) return <Drops work={work} screen={screen} />;
  if (screen.id.startsWith("thermostat-")) return <Correction work={work} screen={screen} />;
  return null;
}

function Drops({ work, screen }: Props) {
  const drops = dropsOf(screen.id.startsWith("first") ? "first" : "second", work.values, work.context);
  if (drops.length === 0) return null;
  return (
    <ul className="grid gap-1">
      {drops.map(({ what, inWc, plannedInWc }) => (
        <li key={what}>
          {what} takes <strong>{inWc.toFixed(2)} in. w.c.</strong>
          {plannedInWc === null ? "" : `, planned ${plannedInWc.toFixed(2)}`}
        </li>
      ))}
    </ul>
  );
}

function Correction({ work, screen }: Props) {
  const isHumidity = screen.id === "thermostat-humidity";
  const correction = correctionFor(isHumidity ? "humidity" : "temperature", work.values, work.context);
  if (correction === null) return null;
  const { key, unit, difference, next } = correction;
  if (next === null) {
    return (
      <p>
        The thermostat is {Math.abs(difference)} {unit} {difference < 0 ? "above" : "below"} the trusted
        instrument. Which correction it has now is not in the record: enter it under “Settings as left”.
      </p>
    );
  }
  return (
    <Button wide disabled={work.job.isSigned} onClick={() => void phone().enter(work.job.id, key, next)}>
      Left corrected by {next} {unit}
    </Button>
  );
}
