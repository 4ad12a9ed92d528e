import { TextLink } from "@/components/ui/button";
import { SelectField } from "@/components/ui/choice-fields";
import { Notice } from "@/components/ui/notice";
import type { EquipmentModel } from "@/lib/domain/catalog";
import {
  type Block,
  renameSetting,
  rowNames,
  strangeSettings,
  type TableMapping,
} from "@/lib/schemas/catalog-table";

type Props = {
  readonly model: EquipmentModel;
  readonly block: Block;
  readonly mapping: TableMapping;
  readonly onRenamed: (block: Block, mapping: TableMapping) => void;
};

/** Rows are found by the name of their setting: names the model does not have are said, and changed by a choice. */
export function SettingNames({ model, block, mapping, onRenamed }: Props) {
  const strange = strangeSettings(block, mapping, model.data.capacitySettings);
  if (strange.length === 0) return null;
  const known = rowNames(model.data.capacitySettings);
  return (
    <Notice
      kind="information"
      title={`The model has no capacity setting named ${strange.map((name) => `“${name}”`).join(", ")}.`}
    >
      <p>
        Its settings are {known.map((name) => `“${name}”`).join(", ")}. No job finds rows under another name:
        say which setting they are, or add the setting when you{" "}
        <TextLink href={`/catalog/${model.id}/edit`}>change the model</TextLink>.
      </p>
      <div className="mt-2 grid grid-cols-[repeat(auto-fit,minmax(min(100%,14rem),1fr))] gap-3">
        {strange.map((from) => (
          <SelectField
            key={from}
            name={`setting-${from}`}
            label={`Rows named “${from}” are`}
            placeholder="Choose…"
            options={known.map((name) => ({ value: name, label: name }))}
            value=""
            onChange={({ target }) => {
              const renamed = renameSetting(block, mapping, from, target.value);
              onRenamed(renamed.block, renamed.mapping);
            }}
          />
        ))}
      </div>
    </Notice>
  );
}
