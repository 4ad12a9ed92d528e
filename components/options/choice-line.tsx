import type { OptionChoice } from "@/lib/domain/options";

/** What was chosen and why. */
export function ChoiceLine({ choice }: { readonly choice: OptionChoice }) {
  return (
    <p>
      <strong>Chosen: {choice.label}.</strong> {choice.reason}{" "}
      <span className="text-sm text-muted">
        {choice.byName}, {choice.at.slice(0, 10)}
      </span>
    </p>
  );
}
