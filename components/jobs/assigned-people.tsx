import { CheckField, type Choice } from "@/components/ui/choice-fields";

type Props = { readonly people: readonly Choice[]; readonly assigned: readonly string[] };

/** Who goes: one tick a person. */
export function AssignedPeople({ people, assigned }: Props) {
  return (
    <fieldset className="grid content-start gap-1">
      <legend className="mb-1 text-sm font-semibold">Assigned</legend>
      {people.map((one) => (
        <CheckField
          key={one.value}
          id={`tech-${one.value}`}
          name="techIds"
          label={one.label}
          value={one.value}
          defaultChecked={assigned.includes(one.value)}
        />
      ))}
    </fieldset>
  );
}
