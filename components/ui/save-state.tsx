import { cx } from "./cx";

export type SaveStateProps =
  | { readonly state: "unchanged" }
  /** Waits for a pause in typing. */
  | { readonly state: "typing" }
  | { readonly state: "saving" }
  /** `at` in words, for instance "14:03". */
  | { readonly state: "saved"; readonly at: string }
  /** Kept on this device until it can be sent. */
  | { readonly state: "kept here"; readonly waiting: number }
  | { readonly state: "not saved"; readonly why: string };

/** Whether what was typed is safe, in words. */
export function SaveState(props: SaveStateProps) {
  const failed = props.state === "not saved";
  return (
    <p
      role={failed ? "alert" : "status"}
      className={cx(
        "min-h-5 text-sm",
        failed ? "font-semibold text-short" : "text-muted",
        props.state === "saving" && "italic",
      )}
    >
      {wording(props)}
    </p>
  );
}

function wording(props: SaveStateProps): string {
  switch (props.state) {
    case "unchanged":
      return "";
    case "typing":
      return "Not saved yet…";
    case "saving":
      return "Saving…";
    case "saved":
      return `Saved ${props.at}`;
    case "kept here":
      return `Saved on this device, ${props.waiting} to send`;
    case "not saved":
      return `Not saved: ${props.why}`;
  }
}
