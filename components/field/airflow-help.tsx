import { lazy, Suspense } from "react";
import { Button } from "@/components/ui/plain-button";
import { type StartupKey, startupField } from "@/lib/domain/startup-walk";
import { useEngine } from "./use-evaluation";
import type { Work } from "./use-job";
import { phone } from "./use-phone";

/** A drawing costs as much script as all screens of a job; it comes when it is wanted, from what the phone keeps. */
const FanCurve = lazy(async () => ({ default: (await import("./fan-curve")).FanCurve }));

type Props = { readonly work: Work; readonly name: StartupKey };

/** The airflow that the other readings give by the chosen method, one tap away. */
export function AirflowHelp({ work, name }: Props) {
  const engine = useEngine();
  const stage = name.startsWith("first") ? "first" : "second";
  const method = work.values[`${stage}AirflowMethod`] ?? null;
  if (engine === null || method === null) return null;
  // A hood needs no correction: only what a plate shows is worked out.
  if (method === "flow plate" && (work.values[`${stage}PlateCfm`] ?? null) === null) return null;
  const airflow = engine.airflowByMethod(work.context, stage);
  if (airflow.known) {
    const value = Math.round(airflow.value);
    return (
      <>
        <Button wide onClick={() => void phone().enter(work.job.id, name, value)}>
          Take {value} cfm by {WORDS[String(method)] ?? method}
        </Button>
        {method === "static table" ? (
          <Suspense>
            <FanCurve work={work} stage={stage} />
          </Suspense>
        ) : null}
      </>
    );
  }
  const missing = airflow.missing.map((key) => labelOf(key, stage)).join(", ");
  return (
    <p className="text-sm text-muted">
      {airflow.problem ?? `To work it out by ${method}, this is missing: ${missing}.`}
    </p>
  );
}

const WORDS: Readonly<Record<string, string>> = {
  "static table": "the maker’s fan table",
  "temperature rise": "temperature rise",
  "flow plate": "the plate, corrected for it",
};

const OTHERS: Readonly<Record<string, string>> = {
  externalStaticInWc: "return and supply static",
  setting: "the airflow setting",
  equipmentModelId: "the equipment",
  elevationFt: "the elevation of the house",
};

function labelOf(key: string, stage: "first" | "second"): string {
  const known = OTHERS[key];
  if (known !== undefined) return known;
  return key.startsWith(stage) || key.startsWith("heater")
    ? startupField(key as StartupKey).label.toLowerCase()
    : key;
}
