import { Delete, Keyboard } from "lucide-react";
import type { ReactNode } from "react";
import { cx } from "@/components/ui/cx";
import type { NumberFieldDef } from "@/lib/domain/fields";

type Props = {
  readonly field: NumberFieldDef;
  readonly text: string;
  readonly type: (text: string) => void;
  readonly hand: "left" | "right";
  readonly speaks: boolean;
  readonly speak: (speaks: boolean) => void;
};

/** Quantities read off a dial or a tape in parts. */
const IN_PARTS: ReadonlySet<string> = new Set(["in. w.c.", "lb", "oz", "ft"]);
const PARTS: readonly (readonly [string, string])[] = [
  ["¼", ".25"],
  ["½", ".5"],
  ["¾", ".75"],
];

/** Keys for one quantity: a sign only where it can be negative, a point only where it has decimals. */
export function NumberPad({ field, text, type, hand, speaks, speak }: Props) {
  const digit = (key: string) => (
    <Key key={key} says={key} press={() => type(`${text}${key}`)}>
      {key}
    </Key>
  );
  const side = [
    <Key key="back" says="Delete the last" press={() => type(text.slice(0, -1))}>
      <Delete aria-hidden="true" className="size-6" />
    </Key>,
    <Key key="clear" says="Clear" press={() => type("")}>
      C
    </Key>,
    field.min < 0 ? (
      <Key
        key="sign"
        says="Change the sign"
        press={() => type(text.startsWith("-") ? text.slice(1) : `-${text}`)}
      >
        ±
      </Key>
    ) : null,
    <Key key="speak" says="The phone’s keyboard, to speak" isOn={speaks} press={() => speak(!speaks)}>
      <Keyboard aria-hidden="true" className="size-6" />
    </Key>,
  ];
  return (
    <fieldset aria-label={`Keys for ${field.label}`} className="grid min-w-0 gap-2">
      <div className={cx("flex gap-2", hand === "left" && "flex-row-reverse")}>
        <div className="grid flex-3 grid-cols-3 gap-2">
          {["7", "8", "9", "4", "5", "6", "1", "2", "3"].map(digit)}
          {field.decimals > 0 ? (
            <Key
              says="Point"
              press={() =>
                type(text.includes(".") ? text : `${text === "" || text === "-" ? `${text}0` : text}.`)
              }
            >
              .
            </Key>
          ) : (
            <span />
          )}
          {digit("0")}
          {field.unit === "cfm" || field.unit === "W" || field.unit === "microns" ? digit("00") : <span />}
        </div>
        <div className="grid flex-1 gap-2">{side}</div>
      </div>
      {field.decimals >= 2 || IN_PARTS.has(field.unit) ? (
        <div className="grid grid-cols-3 gap-2">
          {PARTS.map(([sign, decimals]) => (
            <Key
              key={sign}
              says={`and ${sign}`}
              press={() => type(`${text.replace(/\..*$/, "").replace(/^(-?)$/, "$10")}${decimals}`)}
            >
              {sign}
            </Key>
          ))}
        </div>
      ) : null}
    </fieldset>
  );
}

type KeyProps = {
  readonly says: string;
  readonly press: () => void;
  readonly isOn?: boolean;
  readonly children: ReactNode;
};

function Key({ says, press, isOn, children }: KeyProps) {
  return (
    <button
      type="button"
      aria-label={says}
      aria-pressed={isOn}
      className={cx("button min-h-13! px-0! text-xl!", isOn === true ? "button-primary" : "button-secondary")}
      // The caret stays in the field, so that a keyboard can go on where the thumb stopped.
      onMouseDown={(event) => event.preventDefault()}
      onClick={press}
    >
      {children}
    </button>
  );
}
