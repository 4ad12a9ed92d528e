import { BOARD_SETTINGS, type EquipmentModel } from "@/lib/domain/catalog";
import { OPTIONAL_SECTIONS, valuesOf } from "./equipment-fields";

/** Limits, charge, settings and labels of a model; what the maker does not publish says so. */
export function ModelFacts({ model }: { readonly model: EquipmentModel }) {
  const values = valuesOf(model);
  const labels = Object.entries(BOARD_SETTINGS).flatMap(([key, ours]) => {
    const label = model.data.boardLabels?.[key];
    return label === undefined ? [] : [{ ours, label }];
  });
  return (
    <section aria-labelledby="facts">
      <h2 id="facts" className="mb-2 text-lg font-semibold">
        Settings and limits
      </h2>
      <dl className="grid grid-cols-[repeat(auto-fit,minmax(min(100%,16rem),1fr))] gap-x-6 gap-y-2 border border-rule bg-sheet p-4 text-sm">
        <Fact label="Rated airflow" value={`${model.data.ratedAirflowCfm.toLocaleString("en-US")} cfm`} />
        <Fact
          label="Capacity settings"
          value={model.data.capacitySettings.map(({ name, tons }) => `${name} (${tons} tons)`).join(", ")}
        />
        {OPTIONAL_SECTIONS.flatMap(({ fields }) => fields).map(({ name, label, unit }) => {
          const value = values[name];
          return (
            <Fact
              key={name}
              label={label}
              value={value === null || value === undefined ? "not published" : `${value} ${unit}`}
            />
          );
        })}
        {labels.map(({ ours, label }) => (
          <Fact key={ours} label={`${ours}, maker's label`} value={label} />
        ))}
      </dl>
    </section>
  );
}

function Fact({ label, value }: { readonly label: string; readonly value: string }) {
  return (
    <div>
      <dt className="text-muted">{label}</dt>
      <dd className="font-semibold">{value}</dd>
    </div>
  );
}
