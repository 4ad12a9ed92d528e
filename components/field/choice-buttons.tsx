import { Check } from "lucide-react";
import { cx } from "@/components/ui/cx";
import type { PlainValue } from "@/lib/domain/merge-fields";

type Props = {
  readonly name: string;
  readonly options: readonly { readonly value: PlainValue; readonly label: string }[];
  readonly value: PlainValue;
  readonly choose: (value: PlainValue) => void;
  readonly disabled: boolean;
};

/** One of a few, with targets for a thumb. Pressing the chosen one takes the choice back. */
export function ChoiceButtons({ name, options, value, choose, disabled }: Props) {
  return (
    <fieldset
      id={`entry-${name}`}
      aria-labelledby={`label-${name}`}
      disabled={disabled}
      className={cx("grid min-w-0 gap-2", options.length === 2 && "grid-cols-2")}
    >
      {options.map((option) => {
        const isChosen = option.value === value;
        return (
          <button
            key={String(option.value)}
            type="button"
            aria-pressed={isChosen}
            onClick={() => choose(isChosen ? null : option.value)}
            className={cx("button justify-start!", isChosen ? "button-primary" : "button-secondary")}
          >
            <Check aria-hidden="true" className={cx("size-5 shrink-0", !isChosen && "invisible")} />
            {option.label}
          </button>
        );
      })}
    </fieldset>
  );
}
