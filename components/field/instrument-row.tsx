import type { Instrument } from "@/lib/domain/catalog";
import { quantityOf, type StartupKey, startupField, type WalkScreen } from "@/lib/domain/startup-walk";
import { isOverdue } from "@/lib/domain/what-to-bring";
import type { Work } from "./use-job";
import { phone } from "./use-phone";

type Props = { readonly work: Work; readonly screen: WalkScreen; readonly name: StartupKey };

/** Which instrument the reading is taken with, how exact it is, and whether its calibration still holds. */
export function InstrumentRow({ work, screen, name }: Props) {
  const { job, context, values } = work;
  const quantities = screen.fields.flatMap((key) => quantityOf(key) ?? []);
  // A retired one stays where it was chosen and is not offered anew.
  const offered = context.instruments.filter((one) => one.retired !== true || one.id === values[name]);
  const fit = offered.filter((one) =>
    one.accuracy.some((accuracy) => quantities.includes(accuracy.quantity)),
  );
  const chosen = context.instruments.find((one) => one.id === values[name]);
  return (
    <div className="grid gap-1 border-t border-rule pt-3">
      <label htmlFor={`instrument-${name}`} className="text-sm font-semibold">
        {startupField(name).label}
      </label>
      <select
        id={`instrument-${name}`}
        className="control"
        disabled={job.isSigned}
        value={typeof values[name] === "string" ? values[name] : ""}
        onChange={(event) => void phone().enter(job.id, name, event.target.value || null)}
      >
        <option value="">Not chosen: accuracy unknown</option>
        {(fit.length > 0 ? fit : offered).map((one) => (
          <option key={one.id} value={one.id}>
            {one.name}
          </option>
        ))}
      </select>
      {chosen ? (
        <p className="text-sm text-muted">
          {accuracyWords(chosen, quantities)}; {calibrationWords(chosen)}
        </p>
      ) : null}
    </div>
  );
}

function accuracyWords({ accuracy }: Instrument, quantities: readonly string[]): string {
  const own = accuracy.filter((one) => quantities.includes(one.quantity));
  if (own.length === 0) return "accuracy for this reading is not in the catalog";
  return own
    .map(({ quantity, unit, plusMinus, percentOfReading }) => {
      const parts = [
        plusMinus > 0 || percentOfReading === 0 ? `± ${plusMinus} ${unit}` : null,
        percentOfReading > 0 ? `± ${percentOfReading} % of reading` : null,
      ].filter((part) => part !== null);
      return `${quantity} ${parts.join(" and ")}`;
    })
    .join(", ");
}

function calibrationWords(instrument: Instrument): string {
  const today = new Date().toISOString().slice(0, 10);
  if (instrument.calibrationDueOn === null) return "calibration not recorded";
  return isOverdue(instrument, today)
    ? `calibration ended ${instrument.calibrationDueOn}`
    : `calibrated until ${instrument.calibrationDueOn}`;
}
